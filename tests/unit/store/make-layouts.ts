/**
 * Makes `layouts/layout-1.sqlite` to `layout-8.sqlite` from `layout-9.sqlite`: the same made-up yard as each earlier
 * layout held it. Run: `npx node tests/unit/store/make-layouts.ts`.
 *
 * `layout-9.sqlite` was filled through the app as it was at that layout (commit 34ca0c5): rounds with typed values, two
 * meters, undone and excluded readings, moves, oven checks, a sample board, a round still open. It cannot be made
 * again, because that app is gone. `layout-10.sqlite` is that file as the app of layout 10 (commit b0bdc1f) opened it,
 * judged its boards and moved one; `layout-11.sqlite` is that one as the app of layout 11 (commit 4899fd1) opened it and
 * forecast its boards; `layout-12.sqlite` that one as the app of layout 12 (commit 4c4996e) did.
 * `layout-13.sqlite` is that one as the app of layout 13 (commit da07999) opened it and edited a board.
 * `layout-14.sqlite` is that one as the app of layout 14 (commit bb1e6c4) opened it.
 * `layout-15.sqlite` is that one as the app of layout 15 (commit 46ca5c7) opened it.
 * `layout-16.sqlite` is that one as the app of layout 16 (commit 185754a) opened it; `layout-17.sqlite` that one as the
 * app of layout 17 (commit c72543b) did, and `layout-18.sqlite` that one as the app of layout 18 (commit 15c360b) did.
 * `layout-19.sqlite` is that one as the app of layout 19 (commit b6ea2af) opened it, and `layout-20.sqlite` that one as
 * the app of layout 20 (commit 59cc548) did. `layout-21.sqlite` is that one as the app of layout 21 (commit 67fd249)
 * opened it, and `layout-22.sqlite` that one as the app of layout 22 (commit 5a10541) did. `layout-23.sqlite` is that one
 * as the store of layout 23 (commit 8af44e3) opened it, and `layout-25.sqlite` is `layout-24.sqlite` as the store of
 * layout 25 (commit 7b233481) opened it. `layout-26.sqlite` is that one as the store of layout 26 (commit 0dadf5c6) did,
 * `layout-27.sqlite` that one as the store of layout 27 (commit 339f5899), `layout-28.sqlite` that one as the store of
 * layout 28 (commit 9a41d168), and `layout-29.sqlite` that one as the store of layout 29 (commit 067b7483) did.
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { migrations } from '../../../electron/store/migrations.ts';

const folder = join(import.meta.dirname, 'layouts');
const newest = new Database(join(folder, 'layout-9.sqlite'), { readonly: true });

for (let layout = 1; layout <= 8; layout++) makeLayout(layout);
newest.close();

function makeLayout(layout: number): void {
  const file = join(folder, `layout-${layout}.sqlite`);
  for (const suffix of ['', '-wal', '-shm']) rmSync(file + suffix, { force: true });
  const db = new Database(file);
  // Small pages: most of the two dozen tables hold a handful of rows.
  db.pragma('page_size = 1024');
  for (const { sql } of migrations.slice(0, layout)) db.exec(sql);
  db.pragma(`user_version = ${layout}`);
  db.pragma('foreign_keys = OFF');
  db.transaction(() => {
    for (const table of tablesOf(db)) copyRows(table, db);
    // The triggers took the copied rows for new ones.
    for (const table of ['finding_due', 'round']) if (tablesOf(db).includes(table)) copyRows(table, db);
  })();
  db.pragma('journal_mode = WAL');
  db.pragma('wal_checkpoint(TRUNCATE)');
  db.close();
}

function copyRows(table: string, db: Database.Database): void {
  const columns = (db.pragma(`table_info(${table})`) as { name: string }[]).map((column) => column.name);
  const put = db.prepare(`INSERT OR REPLACE INTO ${table} (${columns}) VALUES (${columns.map(() => '?')})`);
  if (table === 'finding_due') db.exec('DELETE FROM finding_due');
  for (const row of newest.prepare(`SELECT ${columns} FROM ${table}`).raw().iterate())
    put.run(row as unknown[]);
}

function tablesOf(db: Database.Database): string[] {
  const rows = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY rowid").all();
  return (rows as { name: string }[]).map((row) => row.name);
}
