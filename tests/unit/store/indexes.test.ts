import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { conditionOf, countedFrom, orderOf } from '../../../electron/store/board-page.ts';
import { CLOSED_PLACE_IN_USE, placeReads } from '../../../electron/store/place-table.ts';
import { type Db, openYardFile } from '../../../electron/store/yard-file.ts';

interface Reference {
  table: string;
  from: string;
}

const openNew = (): Db =>
  openYardFile(join(mkdtempSync(join(tmpdir(), 'pintally-indexes-')), 'yard.sqlite')).db;
const planOf = (db: Db, sql: string): string[] =>
  (db.prepare(`EXPLAIN QUERY PLAN ${sql}`).all() as { detail: string }[]).map(({ detail }) => detail);

test('what boards of a place amount to is read from an index alone, and nothing is sorted', () => {
  const db = openNew();
  const asked: string[] = [`SELECT p.id FROM place p ${CLOSED_PLACE_IN_USE}`];
  const prepare = (sql: string) => {
    asked.push(sql);
    return db.prepare(sql);
  };
  placeReads(new Proxy(db, { get: (of, name) => (name === 'prepare' ? prepare : Reflect.get(of, name)) }));
  const plans = asked.filter((sql) => sql.includes('board_by_place')).map((sql) => planOf(db, sql));
  db.close();
  // Boards by place and stack, closed places in use, and what boards tell of air and of surface, each used and newest.
  expect(plans).toHaveLength(6);
  for (const plan of plans) {
    expect(plan.filter((step) => /USING COVERING INDEX board_by_place/.test(step))).toHaveLength(1);
    expect(plan.filter((step) => step.includes('TEMP B-TREE'))).toEqual([]);
  }
});

test('a search through all boards reads an index alone, in the order of the list', () => {
  const db = openNew();
  const asked = { stackId: null, search: 'oak', offset: 0, limit: 100 };
  const { from, order } = orderOf(asked);
  const where = conditionOf(asked).replaceAll('@like', "'%oak%'");
  for (const sql of [
    `SELECT b.id ${from} ${where} ${order}`,
    `SELECT count(*) ${countedFrom(asked)} ${where}`,
  ]) {
    const plan = planOf(db, sql);
    expect(plan[0]).toContain('b USING COVERING INDEX board_by_text');
    expect(plan.filter((step) => step.includes('TEMP B-TREE'))).toEqual([]);
  }
  db.close();
});

test('what was deleted of a board is found by an index', () => {
  const db = openNew();
  const lost = 'SELECT row_uuid FROM act_change WHERE new_values IS NULL AND';
  expect(planOf(db, `${lost} old_values ->> 'board_id' = 1`)[0]).toContain('act_change_by_lost_board');
  expect(planOf(db, `${lost} in_table = 'place' AND old_values ->> 'id' = 1`)[0]).toContain(
    'act_change_by_lost_id',
  );
  db.close();
});

test.each(['board', 'round', 'stack', 'reading'])(
  'whatever names a %s is found by an index, so that deleting thousands goes through no table for each',
  (named) => {
    const db = openNew();
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
