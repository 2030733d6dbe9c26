import type { Db } from './yard-file.ts';

/** What a person did: one request that changed something. */
export interface Act {
  /** The request's id, a UUID. */
  id: string;
  /** The request's name. */
  request: string;
  /** Of the request's input, so that the same id with other content is noticed. */
  inputHash: string;
  /** UTC instant, ISO 8601. */
  at: string;
  /** The window that asked. */
  who: string;
}

/** What was answered, as it was given to `finish`. */
export type FinishedAct = Act & { outcome: unknown };

export function actReads(db: Db) {
  const one = db.prepare<[string], Act & { outcome: string }>(
    `SELECT uuid AS id, request, input_hash AS inputHash, at, who, outcome FROM act
     WHERE uuid = ? AND outcome IS NOT NULL`,
  );
  const newestAt = db.prepare<[], { at: string }>('SELECT at FROM act ORDER BY id DESC LIMIT 1');
  const newestId = db.prepare<[], { id: number | null }>('SELECT max(id) AS id FROM act');
  const byOutcome = db.prepare<[string, string, string], { uuid: string }>(
    `SELECT uuid FROM act WHERE request = ? AND outcome ->> ? = ? ORDER BY id DESC LIMIT 1`,
  );
  return {
    /** Grows with every act; null before the first. */
    newestId: (): number | null => newestId.get()?.id ?? null,
    /** When the last act was done, as the clock told then; null before the first. */
    newestAt: (): string | null => newestAt.get()?.at ?? null,
    /** The newest act of a request whose outcome has this at one of its names, undone or not; null where there is none. */
    findOutcome: (request: string, name: string, value: string): string | null =>
      byOutcome.get(request, `$.${name}`, value)?.uuid ?? null,
    /** Undefined for a request that nobody sent, that was refused, or that is not finished. */
    find: (id: string): FinishedAct | undefined => {
      const row = one.get(id);
      return row && { ...row, outcome: JSON.parse(row.outcome) };
    },
  };
}

export function actWrites(db: Db) {
  const add = db.prepare('INSERT INTO act (uuid, request, input_hash, at, who) VALUES (?, ?, ?, ?, ?)');
  const now = db.prepare('SELECT uuid FROM act WHERE id = (SELECT act_id FROM act_now)').pluck();
  const setNow = db.prepare('UPDATE act_now SET act_id = ?');
  const isFinished = db.prepare('DELETE FROM unfinished_act WHERE act_id = (SELECT act_id FROM act_now)');
  const setOutcome = db.prepare('UPDATE act SET outcome = ? WHERE id = (SELECT act_id FROM act_now)');
  return {
    /**
     * Begins an act: until `finish`, every row that is added, edited or deleted belongs to it. Both are called within
     * one transaction, so that an act that is refused leaves nothing behind, itself included.
     */
    begin: ({ id, request, inputHash, at, who }: Act): void => {
      if (!db.inTransaction) throw new RangeError('An act begins and ends within a transaction.');
      setNow.run(add.run(id, request, inputHash, at, who).lastInsertRowid);
    },
    /**
     * A commit that failed may have reached the file, and would apply at the next opening. Writing in its place makes sure
     * that it does not.
     */
    overwriteFailedCommit: (): void => {
      const before = db.prepare('SELECT id, act_id AS act FROM act_now').get() as { id: number; act: number };
      db.prepare('DELETE FROM act_now').run();
      db.prepare('INSERT INTO act_now (id, act_id) VALUES (@id, @act)').run(before);
    },
    /** The id of the act that was begun. */
    now: (): string => now.get() as string,
    finish: (outcome: unknown): void => {
      setOutcome.run(JSON.stringify(outcome));
      isFinished.run();
      setNow.run(null);
    },
  };
}
