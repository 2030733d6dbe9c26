import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

// A table whose root page is not in the file is what SQLite meets where a disk lost a page.
test('a yard file that turns out to be damaged while it is written is closed, and its salvage is offered', async () => {
  const other = new Database(join(yard.dataDir, 'yard.sqlite'));
  other.unsafeMode(true);
  other.pragma('writable_schema = ON');
  other.prepare("UPDATE sqlite_schema SET rootpage = 99999 WHERE name = 'place'").run();
  // The open connection reads the schema again.
  other.pragma(`schema_version = ${Number(other.pragma('schema_version', { simple: true })) + 1}`);
  other.close();
  const refused = await yard.refusal('places.edit', {
    id: yard.place.id,
    basedOn: 1,
    changed: { name: 'Loft' },
  });
  expect(refused).toContain('Pintally cannot read all of the yard file');
  expect(await yard.query('yard.info', {})).toMatchObject({
    problem: { code: 'refusal.yard-damaged' },
  });
});
