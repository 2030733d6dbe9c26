import { z } from 'zod';
import { depthSchema, suspicionSchema } from '../../shared-core/probing/readings/reading.ts';
import type { RoundSuspicion } from '../../shared-core/probing/suspicions/round-suspicions.ts';
import type { BadCacheCollector } from './bad-caches.ts';
import { readJson } from './read-json.ts';
import type { Db } from './yard-file.ts';

const suspicionsSchema: z.ZodType<RoundSuspicion[]> = z.array(
  z.object({ depth: depthSchema.nullable(), suspicion: suspicionSchema }),
);

/** What holding the boards of a round against each other found; a cache that can be made again from the readings. */
export function roundComparisonReads(db: Db, badCaches: BadCacheCollector) {
  const suspicions = db.prepare<[number, number], { suspicions: string }>(
    'SELECT suspicions FROM round_suspicion WHERE round_id = ? AND board_id = ?',
  );
  const boards = db.prepare<[number], { boardId: number }>(
    'SELECT board_id AS boardId FROM round_suspicion WHERE round_id = ?',
  );
  const stale = db.prepare<[number], { id: number }>(
    'SELECT id FROM round WHERE compared_by_rules IS NOT ? ORDER BY id DESC',
  );
  return {
    suspicions: (roundId: number, boardId: number): RoundSuspicion[] => {
      const row = suspicions.get(roundId, boardId);
      if (row === undefined) return [];
      // What older rules found may have another form: then the round is compared again.
      const found = readJson(suspicionsSchema, row.suspicions);
      if (found === undefined) badCaches.add('comparisons', roundId);
      return found ?? [];
    },
    questionableBoards: (roundId: number): number[] => boards.all(roundId).map((row) => row.boardId),
    /** Rounds that these rules have not compared as they are now, the newest first. */
    unsettled: (rulesVersion: number): number[] => stale.all(rulesVersion).map((row) => row.id),
  };
}

export function roundComparisonWrites(db: Db) {
  const put = db.prepare(
    `INSERT INTO round_suspicion (round_id, board_id, suspicions) VALUES (?, ?, ?)
     ON CONFLICT (round_id, board_id) DO UPDATE SET suspicions = excluded.suspicions
       WHERE suspicions <> excluded.suspicions`,
  );
  const drop = db.prepare('DELETE FROM round_suspicion WHERE round_id = ? AND board_id = ?');
  const begin = db.prepare('UPDATE round SET compared_by_rules = 0 WHERE id = ?');
  const settle = db.prepare('UPDATE round SET compared_by_rules = ? WHERE id = ? AND compared_by_rules = 0');
  return {
    /** @returns whether something else was known of the board before */
    put: (roundId: number, boardId: number, found: readonly RoundSuspicion[]): boolean => {
      const { changes } =
        found.length === 0 ? drop.run(roundId, boardId) : put.run(roundId, boardId, JSON.stringify(found));
      return changes > 0;
    },
    begin: (roundId: number): void => {
      begin.run(roundId);
    },
    /**
     * Ends what `begin` began: the round is compared by these rules, until a reading, an amendment or a temperature comes.
     * @returns false where one came since; the round is then to be compared again
     */
    settle: (roundId: number, rulesVersion: number): boolean => settle.run(rulesVersion, roundId).changes > 0,
  };
}
