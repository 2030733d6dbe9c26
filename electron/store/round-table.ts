import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import { roundsOfWood, sameWood } from './lineage.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

export interface RoundRow {
  id: number;
  version: number;
  stackId: number;
  /** Where its boards are, if that is not where the stack is; null: with the stack. */
  placeId: number | null;
  startedAt: string;
  /** By the clock, by a person who corrected it, or by a person who gave only the day. */
  datedBy: 'clock' | 'time' | 'day';
  /** Of the air then, °C, as a person gave it; null where nobody did. */
  airTempC: number | null;
  finishedAt: string | null;
  /** The newest board that there was when it was finished; null of one that runs. */
  lastBoardId: number | null;
  /** When the act that began it was undone: then it is not shown. */
  undoneAt: string | null;
}

type NewRound = Pick<RoundRow, 'stackId' | 'placeId' | 'startedAt' | 'datedBy' | 'airTempC'>;
const newColumns: Columns<NewRound> = {
  stackId: 'stack_id',
  placeId: 'place_id',
  startedAt: 'started_at',
  datedBy: 'dated_by',
  airTempC: 'air_temp_c',
};
const columns: Columns<RoundRow> = {
  id: 'id',
  version: 'version',
  ...newColumns,
  finishedAt: 'finished_at',
  lastBoardId: 'last_board_id',
  undoneAt: 'undone_at',
};
const dateColumns: Columns<Pick<RoundRow, 'startedAt' | 'datedBy' | 'finishedAt'>> = {
  startedAt: 'started_at',
  datedBy: 'dated_by',
  finishedAt: 'finished_at',
};

export function roundReads(db: Db) {
  const select = `SELECT ${selected(columns, 'r')} FROM round r`;
  const one = db.prepare<[number], RoundRow>(`${select} WHERE r.id = ?`);
  const open = db.prepare<[number], RoundRow>(
    `${select} WHERE r.stack_id = ? AND r.finished_at IS NULL AND r.undone_at IS NULL ORDER BY r.id DESC LIMIT 1`,
  );
  const readIn = `FROM reading g WHERE g.round_id = r.id AND ${holds('g')}`;
  const ofStack = db.prepare<[number, string, string], { roundId: number; boards: number; savedAt: string }>(
    `SELECT r.id AS roundId, (SELECT count(DISTINCT g.board_id) ${readIn}) AS boards,
       coalesce((SELECT a.at FROM act a WHERE a.id = (SELECT max(g.act_id) ${readIn})), r.started_at) AS savedAt
     FROM round r WHERE r.stack_id = ? AND r.undone_at IS NULL AND r.started_at BETWEEN ? AND ? ORDER BY boards DESC`,
  );
  const ofBoard = db.prepare<{ boardId: number }, RoundRow>(
    `${select} WHERE r.id IN ${roundsOfWood('@boardId')} AND EXISTS (SELECT 1 FROM reading g
         WHERE g.board_id IN ${sameWood('@boardId', 'r.id')} AND g.round_id = r.id AND ${holds('g')})
       AND r.undone_at IS NULL ORDER BY r.started_at DESC, r.id DESC`,
  );
  return {
    get: (id: number): RoundRow | undefined => one.get(id),
    /** One that a person sees: not where the act that began it was undone. */
    shown: (id: number): RoundRow | undefined => {
      const row = one.get(id);
      return row?.undoneAt === null ? row : undefined;
    },
    /** Those in which the board was read, or before the cut what it came from, newest first. */
    ofBoard: (boardId: number): RoundRow[] => ofBoard.all({ boardId }),
    /** Those of a stack that began in a time, the one with the most boards read first; and when their newest reading was saved. */
    onStackBetween: (stackId: number, from: string, until: string) => ofStack.all(stackId, from, until),
    openOnStack: (stackId: number): RoundRow | undefined => open.get(stackId),
  };
}

export function roundWrites(db: Db, { get }: ReturnType<typeof roundReads>) {
  const add = recordAdder(db, 'round', newColumns);
  const finish = db.prepare(
    `UPDATE round SET finished_at = max(?, started_at), last_board_id = coalesce(?, (SELECT max(id) FROM board)),
       version = version + 1 WHERE id = ? AND finished_at IS NULL`,
  );
  const reopen = db.prepare(
    'UPDATE round SET finished_at = NULL, last_board_id = NULL, version = version + 1 WHERE id = ?',
  );
  return {
    /** Of boards with the stack unless a place is given; the air can be left out where nobody measured it. */
    add: (round: Omit<NewRound, 'airTempC' | 'placeId'> & Partial<NewRound>): number =>
      add({ airTempC: null, placeId: null, ...round }),
    edit: recordEditor(db, 'round', dateColumns, get),
    /**
     * Never before it began.
     * @param lastBoardId  the newest of its boards that need not be read to be of it; null: of all that there are now
     */
    finish: (id: number, at: string, lastBoardId: number | null = null): void => {
      finish.run(at, lastBoardId, id);
    },
    reopen: (id: number): void => {
      reopen.run(id);
    },
  };
}
