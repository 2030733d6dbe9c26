import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openYardFile } from '../../../electron/store/yard-file.ts';

interface Reference {
  table: string;
  from: string;
}

test.each(['board', 'round', 'stack', 'reading'])(
  'whatever names a %s is found by an index, so that deleting thousands goes through no table for each',
  (named) => {
    const { db } = openYardFile(join(mkdtempSync(join(tmpdir(), 'pintally-indexes-')), 'yard.sqlite'));
    const tables = db
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table'")
      .pluck()
      .all() as string[];
    const without = tables.flatMap((table) => {
      const indexes = db.pragma(`index_list(${table})`) as { name: string }[];
      const first = indexes.map(
        ({ name }) => (db.pragma(`index_info(${name})`) as { name: string }[])[0]?.name,
      );
      const keys = db.pragma(`table_info(${table})`) as { name: string; pk: number }[];
      const found = [...first, keys.find(({ pk }) => pk === 1)?.name];
      const references = db.pragma(`foreign_key_list(${table})`) as Reference[];
      return references
        .filter(({ table: to, from }) => to === named && !found.includes(from))
        .map(({ from }) => `${table}.${from}`);
    });
    db.close();
    // Boards that are due are few, and judged soon.
    expect(without.filter((column) => column !== 'finding_due.round_id')).toEqual([]);
  },
);
