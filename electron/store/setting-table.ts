import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { readJson } from './read-json.ts';
import type { Db } from './yard-file.ts';

/** Settings as one JSON value a key; what they mean is the app's to say. */
export function settingReads(db: Db) {
  const one = db.prepare<[string], { value: string }>('SELECT value FROM setting WHERE key = ?');
  return {
    get: (key: string): unknown => {
      const row = one.get(key);
      // Damaged ones are treated as missing: the defaults hold.
      return row && readJson(z.unknown(), row.value);
    },
    /** Whether it was ever saved, also where the disk damaged it since. */
    has: (key: string): boolean => one.get(key) !== undefined,
  };
}

export function settingWrites(db: Db) {
  const put = db.prepare(
    `INSERT INTO setting (key, uuid, value) VALUES (?, ?, ?)
     ON CONFLICT (key) DO UPDATE SET value = excluded.value, version = version + 1`,
  );
  return {
    put: (key: string, value: unknown): void => {
      put.run(key, randomUUID(), JSON.stringify(value));
    },
  };
}
