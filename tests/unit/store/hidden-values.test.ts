import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { withHiddenValues } from '../../../electron/store/hidden-values.ts';

test('values that are compared are hidden, wherever they are', () => {
  expect(
    withHiddenValues('SELECT a FROM t WHERE b = ? AND c >= @c AND d IS ? AND e IS NOT @e AND f <> ? LIMIT ?'),
  ).toBe('SELECT a FROM t WHERE b = +? AND c >= +@c AND d IS +? AND e IS NOT +@e AND f <> +? LIMIT ?');
  expect(withHiddenValues('WHERE b IN (SELECT @b UNION ALL SELECT a FROM u)')).toBe(
    'WHERE b IN (SELECT +@b UNION ALL SELECT a FROM u)',
  );
});

test('a pattern is not hidden', () => {
  expect(withHiddenValues("WHERE code LIKE ? AND name LIKE @name ESCAPE '!'")).toBe(
    "WHERE code LIKE ? AND name LIKE @name ESCAPE '!'",
  );
});

test('what is hidden is found as before, of every type', () => {
  const db = new Database(':memory:');
  db.exec('CREATE TABLE t (id INTEGER PRIMARY KEY, text TEXT, number REAL, bytes BLOB, missing TEXT)');
  const values = ['12', 1.5, Buffer.from([1, 2]), null];
  db.prepare('INSERT INTO t (text, number, bytes, missing) VALUES (?, ?, ?, ?)').run(...values);
  const found = db.prepare(
    withHiddenValues(
      'SELECT id FROM t WHERE id = ? AND text = ? AND number = ? AND bytes = ? AND missing IS ?',
    ),
  );
  expect(found.all('1', ...values)).toEqual([{ id: 1 }]);
  db.close();
});
