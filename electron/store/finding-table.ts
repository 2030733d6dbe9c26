import { type RoundFinding, roundFindingSchema } from '../../shared-core/contract/round.ts';
import { type LatestFinding, latestFindingSchema } from '../../shared-core/contract/yard.ts';
import { FULL_ROUND_HOLDS } from '../../shared-core/probing/calls/half-probed.ts';
import { asJudged } from '../../shared-core/probing/calls/judgement.ts';
import type { BadCacheCollector } from './bad-caches.ts';
import { keptRecord } from './lineage.ts';
import { outlookFrom } from './outlook-table.ts';
import { parsedOnce } from './parsed-once.ts';
import { readJson, valueIn } from './read-json.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

/** What a board with a reading `g` has for that round, made or due. One read by slips alone has none. */
export const FINDING_OF_READING = `SELECT 1 FROM finding f WHERE f.board_id = g.board_id AND f.round_id = g.round_id
  UNION ALL SELECT 1 FROM finding_due d WHERE d.board_id = g.board_id AND d.round_id = g.round_id`;

const latestOf = parsedOnce((record: string) => readJson(latestFindingSchema, record));
const ofRound = parsedOnce((record: string) => readJson(roundFindingSchema, record));

/** What the rules made of each board's readings in each round; a cache that can be made again from the readings. */
export function findingReads(db: Db, badCaches: BadCacheCollector) {
  /**
   * One that cannot be read, or was saved before a finding said as much as today, is treated as missing. That of the
   * board's latest round has the call of today, as every list of boards.
   */
  function read<T extends LatestFinding>(
    parsed: (record: string) => T | undefined,
    { boardId, record, outlook }: { boardId: number; record: string; outlook: string | null },
  ): T | null {
    const finding = parsed(record);
    if (finding === undefined) badCaches.add('findings', boardId);
    const judgement = outlookFrom(outlook, boardId, badCaches)?.judgement;
    return finding && judgement ? asJudged(finding, judgement) : (finding ?? null);
  }
  /** The forecast of the board, beside its latest round. */
  const outlookOf = (boardId: string, roundId: string) => `
     LEFT JOIN outlook o ON o.board_id = ${boardId}
       AND ${roundId} = (SELECT latest_round_id FROM board WHERE id = ${boardId})`;

  const ofBoard = db.prepare<[number], { boardId: number; record: string; outlook: string | null }>(
    `SELECT f.board_id AS boardId, f.record, o.record AS outlook FROM finding f JOIN round r ON r.id = f.round_id
     ${outlookOf('f.board_id', 'f.round_id')}
     WHERE f.board_id = ? ORDER BY r.started_at, r.id`,
  );
  const inRound = db.prepare<
    { roundId: number; rules: number },
    { boardId: number; record: string | null; outlook: string | null }
  >(
    `SELECT g.board_id AS boardId, f.record, o.record AS outlook
     FROM (SELECT DISTINCT ${keptRecord('g.board_id')} AS board_id FROM reading g
       WHERE g.round_id = @roundId AND ${holds('g')} AND EXISTS (${FINDING_OF_READING})) g
     LEFT JOIN finding f ON f.board_id = g.board_id AND f.round_id = @roundId AND f.rules_version = @rules
       AND NOT EXISTS (SELECT 1 FROM finding_due d WHERE d.board_id = g.board_id AND d.round_id = @roundId)
     ${outlookOf('g.board_id', '@roundId')}`,
  );
  const one = db.prepare<
    { boardId: number; roundId: number; rules: number },
    { boardId: number; record: string; outlook: string | null }
  >(
    `SELECT f.board_id AS boardId, f.record, o.record AS outlook FROM finding f
     ${outlookOf('f.board_id', 'f.round_id')} WHERE f.board_id = @boardId AND f.round_id = @roundId AND f.rules_version = @rules
       AND NOT EXISTS (SELECT 1 FROM finding_due d WHERE d.board_id = f.board_id AND d.round_id = f.round_id)`,
  );
  const boardsRead = `(SELECT DISTINCT ${keptRecord('g.board_id')} AS id FROM reading g
    WHERE g.round_id = @roundId AND ${holds('g')}) g JOIN board b ON b.id = g.id`;
  const callsLater = `JOIN round l ON l.id = b.latest_round_id JOIN round r ON r.id = @roundId
       AND (l.started_at, l.id) > (r.started_at, r.id)`;
  const readSince = db
    .prepare<{ roundId: number }, number>(`SELECT b.id FROM ${boardsRead} ${callsLater}`)
    .pluck();
  const isReadSince = db
    .prepare<{ boardId: number; roundId: number }, number>(
      `SELECT b.id FROM board b ${callsLater} WHERE b.id = @boardId`,
    )
    .pluck();
  const updating = db
    .prepare<{ roundId: number }, number>(
      `SELECT count(*) FROM ${boardsRead}
       WHERE EXISTS (SELECT 1 FROM finding_due d WHERE d.board_id = b.id AND d.round_id = @roundId)
         OR (b.latest_round_id = @roundId AND b.archived_at IS NULL
           AND EXISTS (SELECT 1 FROM outlook_due d WHERE d.board_id = b.id)
           AND NOT EXISTS (SELECT 1 FROM outlook o WHERE o.board_id = b.id))`,
    )
    .pluck();
  const boardIds = db.prepare<[], { boardId: number }>('SELECT DISTINCT board_id AS boardId FROM finding');
  const dueBelow = db
    .prepare<[number], number>(
      `SELECT DISTINCT d.board_id FROM lineage l JOIN finding_due d ON d.board_id = l.board_id WHERE l.ancestor_id = ?`,
    )
    .pluck();
  const roundsDue = db
    .prepare<[number], number>('SELECT round_id FROM finding_due WHERE board_id = ? ORDER BY round_id')
    .pluck();
  const boardsDue = db
    .prepare<{ rules: number }, number>(
      `SELECT board_id FROM finding_due
       UNION SELECT board_id FROM finding WHERE rules_version < @rules
       UNION SELECT board_id FROM finding WHERE rules_version > @rules`,
    )
    .pluck();
  return {
    /** Oldest first. */
    ofBoard: (boardId: number): LatestFinding[] =>
      ofBoard.all(boardId).flatMap((row) => read(latestOf, row) ?? []),
    /** Of every board read in the round, of what was merged the board that stays; null where its readings are still to be judged by these rules. */
    inRound: (roundId: number, rulesVersion: number): Map<number, RoundFinding | null> =>
      new Map(
        inRound.all({ roundId, rules: rulesVersion }).map(({ boardId, record, outlook }) => {
          return [boardId, record === null ? null : read(ofRound, { boardId, record, outlook })];
        }),
      ),
    /** Boards read in the round of which a later one makes the call. */
    readSince: (roundId: number): number[] => readSince.all({ roundId }),
    /** The same of one of them. */
    isReadSince: (boardId: number, roundId: number): boolean =>
      isReadSince.get({ boardId, roundId }) !== undefined,
    /** How many boards wait to be judged, or, where this is their latest round, for a forecast that may change the call. */
    updatingIn: (roundId: number): number => updating.get({ roundId }) as number,
    /** Of one board; null where its readings in the round are still to be judged by these rules. */
    one: (boardId: number, roundId: number, rulesVersion: number): RoundFinding | null => {
      const row = one.get({ boardId, roundId, rules: rulesVersion });
      return row === undefined ? null : read(ofRound, row);
    },
    /** Every board with a finding. */
    boardIds: (): number[] => boardIds.all().map((row) => row.boardId),
    /** Of the boards that came from this one, those with readings that are still to be judged. */
    dueBelow: (boardId: number): number[] => dueBelow.all(boardId),
    /** Rounds in which a board is still to be judged. */
    roundsDue: (boardId: number): number[] => roundsDue.all(boardId),
    /** Boards with readings that no finding of these rules covers, or whose finding something has outdated. */
    boardsDue: (rulesVersion: number): number[] => boardsDue.all({ rules: rulesVersion }),
  };
}

export function findingWrites(db: Db) {
  const put = db.prepare(
    `INSERT INTO finding (board_id, round_id, at, record, rules_version) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (board_id, round_id) DO UPDATE SET
       at = excluded.at, record = excluded.record, rules_version = excluded.rules_version`,
  );
  // A later round of which only some spots were read takes the place of no full one.
  const call = valueIn('f.record', 'call');
  const markLatest = db.prepare(
    `UPDATE board SET (latest_round_id, latest_call, latest_average_pct, latest_at) =
       (SELECT f.round_id, ${call}, iif(${valueIn('f.record', 'isQuestionable')}, NULL, ${valueIn('f.record', 'averagePct')}), f.at FROM finding f JOIN round r ON r.id = f.round_id
        WHERE f.board_id = board.id ORDER BY ${valueIn('f.record', '$.reason.code')} IS '${FULL_ROUND_HOLDS}', r.started_at DESC, r.id DESC LIMIT 1) WHERE id = ?`,
  );
  const drop = db.prepare('DELETE FROM finding WHERE board_id = ? AND round_id = ?');
  const notDue = db.prepare('DELETE FROM finding_due WHERE board_id = ? AND round_id = ?');
  const putDue = db.prepare<{ boardIds: string }>(
    `INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM finding
     WHERE board_id IN (SELECT value FROM json_each(@boardIds))`,
  );
  const unsettleRounds = db.prepare<{ boardIds: string }>(
    `UPDATE round SET compared_by_rules = NULL WHERE id IN (SELECT round_id FROM finding
     WHERE board_id IN (SELECT value FROM json_each(@boardIds)))`,
  );
  return {
    put: (boardId: number, finding: RoundFinding, rulesVersion: number): void => {
      const { roundId, at } = finding;
      put.run(boardId, roundId, at, JSON.stringify(finding), rulesVersion);
      markLatest.run(boardId);
    },
    /** Nothing was found: the board was read by slips alone. */
    drop: (boardId: number, roundId: number): void => {
      drop.run(boardId, roundId);
      notDue.run(boardId, roundId);
      markLatest.run(boardId);
    },
    /** Something that all findings of these boards, and the comparisons of their rounds, rest on is another now. */
    outdate: (boardIds: readonly number[]): void => {
      const of = { boardIds: JSON.stringify(boardIds) };
      putDue.run(of);
      unsettleRounds.run(of);
    },
  };
}
