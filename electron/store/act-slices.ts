import type { Db } from './yard-file.ts';

/**
 * An act that is done in slices, each a transaction: between them it is unfinished, and no row belongs to it. After the
 * last of them it is finished as any other.
 */
export function actSlices(db: Db) {
  const markUnfinished = db.prepare('INSERT OR IGNORE INTO unfinished_act SELECT act_id FROM act_now');
  const setNone = db.prepare('UPDATE act_now SET act_id = NULL');
  const setNow = db.prepare('UPDATE act_now SET act_id = (SELECT id FROM act WHERE uuid = ?)');
  const unfinished = db
    .prepare('SELECT uuid FROM act WHERE id IN (SELECT act_id FROM unfinished_act) ORDER BY id')
    .pluck();
  return {
    /** Ends a slice that is not the last. */
    pause: (): void => {
      markUnfinished.run();
      setNone.run();
    },
    /** Begins the next. */
    resume: (id: string): void => {
      setNow.run(id);
    },
    /** Those of which slices are done, and not all. */
    unfinished: (): string[] => unfinished.all() as string[],
  };
}
