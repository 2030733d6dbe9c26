import { type CoreHistory, coreHistorySchema } from '../../shared-core/probing/readings/core-history.ts';
import type { BadCacheCollector } from './bad-caches.ts';
import { readJson } from './read-json.ts';
import type { Db } from './yard-file.ts';

/** Whose: of a board, by its readings up to a round; null for before any. */
interface Whose {
  boardId: number;
  afterRoundId: number | null;
}

/** What the history of each board tells of its core, for the round after it; a cache, made with its forecast. */
export function coreHistoryReads(db: Db, badCaches: BadCacheCollector) {
  const of = db.prepare<[number, number], { record: string }>(
    'SELECT record FROM core_history WHERE board_id = ? AND after_round_id = ?',
  );
  return {
    /** Undefined where it is still to be made. */
    of: ({ boardId, afterRoundId }: Whose): CoreHistory | undefined => {
      const row = of.get(boardId, afterRoundId ?? 0);
      const history = row && readJson(coreHistorySchema, row.record);
      if (row !== undefined && history === undefined) badCaches.add('outlooks', boardId);
      return history;
    },
  };
}

export function coreHistoryWrites(db: Db) {
  const put = db.prepare(
    `INSERT INTO core_history (board_id, after_round_id, record) VALUES (?, ?, ?)
     ON CONFLICT (board_id, after_round_id) DO UPDATE SET record = excluded.record`,
  );
  return {
    put: ({ boardId, afterRoundId }: Whose, history: CoreHistory): void => {
      put.run(boardId, afterRoundId ?? 0, JSON.stringify(history));
    },
  };
}
