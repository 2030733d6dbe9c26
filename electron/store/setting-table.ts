import type { Db } from './yard-file.ts';

/** Settings as one JSON value a key; what they mean is the app's to say. */
export function settingTable(db: Db) {
  const one = db.prepare<[string], { value: string }>('SELECT value FROM setting WHERE key = ?');
  const put = db.prepare(
    'INSERT INTO setting (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value',
  );
  return {
    get: (key: string): unknown => {
      const row = one.get(key);
      return row && JSON.parse(row.value);
    },
    put: (key: string, value: unknown): void => {
      put.run(key, JSON.stringify(value));
    },
  };
}
