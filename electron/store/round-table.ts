import { type Reading, readingSchema } from '../../shared-core/probing/readings/reading.ts';
import type { Db } from './yard-file.ts';

export interface RoundRow {
  id: number;
  stackId: number;
  startedAt: string;
  finishedAt: string | null;
}

interface ReadingRecord {
  id: number;
  roundId: number;
  boardId: number;
  spotIndex: number | null;
  spot: string;
  raw: number;
  unit: string;
  how: string;
  settled: number | null;
  woodTempC: number | null;
  meterId: number | null;
  takenAt: string;
  excluded: string | null;
}

const roundFields = 'id, stack_id AS stackId, started_at AS startedAt, finished_at AS finishedAt FROM round';

// The temperature that holds now: the newest said for the board in this round, else the newest said for the round.
const readingFields = `
  g.id, g.round_id AS roundId, g.board_id AS boardId, g.spot_index AS spotIndex, g.spot, g.raw, g.unit, g.how,
  g.settled, g.meter_id AS meterId, g.taken_at AS takenAt,
  (SELECT t.temp_c FROM wood_temperature t
    WHERE t.round_id = g.round_id AND (t.board_id = g.board_id OR t.board_id IS NULL)
    ORDER BY t.board_id IS NULL, t.id DESC LIMIT 1) AS woodTempC,
  (SELECT k.why FROM reading_mark k WHERE k.reading_id = g.id ORDER BY k.id DESC LIMIT 1) AS excluded
  FROM reading g`;

const toReading = (row: ReadingRecord): Reading =>
  readingSchema.parse({
    ...row,
    spot: JSON.parse(row.spot),
    settled: row.settled === null ? null : row.settled === 1,
  });

export function roundTable(db: Db) {
  const one = db.prepare<[number], RoundRow>(`SELECT ${roundFields} WHERE id = ?`);
  const open = db.prepare<[number], RoundRow>(
    `SELECT ${roundFields} WHERE stack_id = ? AND finished_at IS NULL ORDER BY id DESC LIMIT 1`,
  );
  const add = db.prepare('INSERT INTO round (stack_id, started_at) VALUES (?, ?)');
  const finish = db.prepare('UPDATE round SET finished_at = ? WHERE id = ? AND finished_at IS NULL');
  const sayTemperature = db.prepare(
    'INSERT INTO wood_temperature (round_id, board_id, temp_c, said_at) VALUES (?, ?, ?, ?)',
  );
  const roundTemperature = db.prepare<[number], { tempC: number | null }>(
    `SELECT temp_c AS tempC FROM wood_temperature WHERE round_id = ? AND board_id IS NULL ORDER BY id DESC LIMIT 1`,
  );
  const boardTemperature = db.prepare<[number, number], { tempC: number | null }>(
    `SELECT temp_c AS tempC FROM wood_temperature WHERE round_id = ? AND board_id = ? ORDER BY id DESC LIMIT 1`,
  );
  const boardTemperatures = db.prepare<[number], { boardId: number; tempC: number | null }>(
    'SELECT board_id AS boardId, temp_c AS tempC FROM wood_temperature WHERE round_id = ? AND board_id IS NOT NULL ORDER BY id',
  );
  const save = db.prepare(
    `INSERT INTO reading (round_id, board_id, spot_index, spot, raw, unit, how, settled, wood_temp_c, meter_id, taken_at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const mark = db.prepare('INSERT INTO reading_mark (reading_id, why, marked_at) VALUES (?, ?, ?)');
  const reading = db.prepare<[number], ReadingRecord>(`SELECT ${readingFields} WHERE g.id = ?`);
  const inRound = db.prepare<[number, number], ReadingRecord>(
    `SELECT ${readingFields} WHERE g.board_id = ? AND g.round_id = ? ORDER BY g.id`,
  );
  const rounds = db.prepare<[number], { roundId: number }>(
    'SELECT DISTINCT round_id AS roundId FROM reading WHERE board_id = ? ORDER BY round_id',
  );
  const walked = db.prepare<[number], { boardId: number }>(
    'SELECT board_id AS boardId FROM reading WHERE round_id = ? GROUP BY board_id ORDER BY min(id)',
  );

  return {
    get: (id: number): RoundRow | undefined => one.get(id),
    openOnStack: (stackId: number): RoundRow | undefined => open.get(stackId),
    add: (stackId: number, startedAt: string): number => Number(add.run(stackId, startedAt).lastInsertRowid),
    finish: (id: number, at: string): void => {
      finish.run(at, id);
    },
    sayTemperature: (roundId: number, boardId: number | null, tempC: number | null, at: string): void => {
      sayTemperature.run(roundId, boardId, tempC, at);
    },
    temperature: (roundId: number): number | null => roundTemperature.get(roundId)?.tempC ?? null,
    /** Undefined where nothing was said of this board alone. */
    temperatureOfBoard: (roundId: number, boardId: number): number | null | undefined =>
      boardTemperature.get(roundId, boardId)?.tempC,
    /** Those of all boards of which something was said. */
    temperaturesOfBoards: (roundId: number): ReadonlyMap<number, number | null> =>
      new Map(boardTemperatures.all(roundId).map(({ boardId, tempC }) => [boardId, tempC])),
    /** Commits one reading; it is on disk when this returns. */
    save: (saved: Omit<Reading, 'id' | 'excluded'>): number =>
      Number(
        save.run(
          saved.roundId,
          saved.boardId,
          saved.spotIndex,
          JSON.stringify(saved.spot),
          saved.raw,
          saved.unit,
          saved.how,
          saved.settled === null ? null : Number(saved.settled),
          saved.woodTempC,
          saved.meterId,
          saved.takenAt,
        ).lastInsertRowid,
      ),
    /** Sets a reading aside for a reason, or puts it back where `why` is null. */
    mark: (readingId: number, why: string | null, at: string): void => {
      mark.run(readingId, why, at);
    },
    reading: (id: number): Reading | undefined => {
      const row = reading.get(id);
      return row && toReading(row);
    },
    /** In the order they were taken. */
    readings: (boardId: number, roundId: number): Reading[] => inRound.all(boardId, roundId).map(toReading),
    /** Boards read in it, in the order in which each was first read. */
    boardsWalked: (roundId: number): number[] => walked.all(roundId).map((row) => row.boardId),
    /** Rounds in which the board was read, oldest first. */
    roundsOfBoard: (boardId: number): number[] => rounds.all(boardId).map((row) => row.roundId),
  };
}
