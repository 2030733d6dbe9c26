import { mkdtempSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { makeDemoYard } from '../../../electron/app/yard/demo-yard.ts';
import { FileMoved, openYard, type Yard } from '../../../electron/store/yard.ts';

let file: string;
let yard: Yard;

beforeEach(() => {
  file = join(mkdtempSync(join(tmpdir(), 'pintally-spoiled-')), 'yard.sqlite');
  makeDemoYard(file, '2026-06-01T08:00:00.000Z');
  yard = openYard(file);
});
afterEach(() => yard.close());

const overwrite = () => writeFileSync(file, Buffer.alloc(statSync(file).size, 7));
const boardsIn = (path: string): unknown => {
  const db = new Database(path, { readonly: true });
  const boards = db.prepare('SELECT count(*) FROM board').pluck().get();
  db.close();
  return boards;
};

test('a WAL that is emptied after the first change it has is noticed', () => {
  yard.transaction(() => yard.settings.put('units', 'metric'));
  truncateSync(`${file}-wal`);
  expect(yard.loss()).toBe('spoiled');
});

test('a change that is refused because the file was overwritten costs nothing of what SQLite still has', () => {
  const boards = yard.boards.total();
  overwrite();
  expect(() => yard.transaction(() => yard.settings.put('units', 'metric'))).toThrow(FileMoved);
  const { copy, partial } = yard.rescue('2026-06-01');
  expect(partial).toBeNull();
  expect(boardsIn(copy)).toBe(boards);
});

test('a file that is overwritten in the middle of a change: what SQLite still has is saved row by row', () => {
  const boards = yard.boards.total();
  const change = () => {
    yard.settings.put('units', 'metric');
    overwrite();
  };
  expect(() => yard.transaction(change)).toThrow(FileMoved);
  const { copy, partial } = yard.rescue('2026-06-01');
  expect(partial?.kinds).toContainEqual(expect.objectContaining({ kind: 'boards', saved: boards }));
  expect(boardsIn(copy)).toBe(boards);
});
