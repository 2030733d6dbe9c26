import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { prepareWhenUsed } from '../../../electron/store/when-used.ts';

let db: Database.Database;
beforeEach(() => {
  db = new Database(':memory:');
  prepareWhenUsed(db);
});
afterEach(() => db.close());

test('a statement made before its table works once the table is there', () => {
  const add = db.prepare<[number, string]>('INSERT INTO board (id, code) VALUES (?, ?)');
  const codes = db.prepare<[], string>('SELECT code FROM board ORDER BY id').pluck();
  const rows = db.prepare<[number], { id: number; code: string }>('SELECT id, code FROM board WHERE id > ?');
  db.exec('CREATE TABLE board (id INTEGER PRIMARY KEY, code TEXT)');
  expect(add.run(1, 'OAK-01').changes).toBe(1);
  expect(add.run(2, 'OAK-02').lastInsertRowid).toBe(2);
  expect(codes.get()).toBe('OAK-01');
  expect(codes.all()).toEqual(['OAK-01', 'OAK-02']);
  expect(rows.get(1)).toEqual({ id: 2, code: 'OAK-02' });
  expect(rows.get(2)).toBeUndefined();
  expect([...rows.iterate(0)]).toEqual(rows.all(0));
});

test('one that names what is not there fails when it is used', () => {
  const statement = db.prepare('SELECT 1 FROM nowhere');
  expect(() => statement.get()).toThrow('no such table: nowhere');
});
