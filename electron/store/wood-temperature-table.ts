import { type Columns, rowAppender } from './columns.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

interface WoodTemperature {
  roundId: number;
  /** Null: of the whole round. */
  boardId: number | null;
  tempC: number | null;
  givenAt: string;
}

const columns: Columns<WoodTemperature> = {
  roundId: 'round_id',
  boardId: 'board_id',
  tempC: 'temp_c',
  givenAt: 'given_at',
};

/** The wood's temperature as a person gave it; the newest for a board, else the newest for its round, holds. */
export function woodTemperatureReads(db: Db) {
  const ofRound = db.prepare<[number], { tempC: number | null }>(
    `SELECT temp_c AS tempC FROM wood_temperature t WHERE round_id = ? AND board_id IS NULL AND ${holds('t')} ORDER BY id DESC LIMIT 1`,
  );
  const ofBoard = db.prepare<[number, number], { tempC: number | null }>(
    `SELECT temp_c AS tempC FROM wood_temperature t WHERE round_id = ? AND board_id = ? AND ${holds('t')} ORDER BY id DESC LIMIT 1`,
  );
  const ofBoards = db.prepare<[number], { boardId: number; tempC: number | null }>(
    `SELECT board_id AS boardId, temp_c AS tempC FROM wood_temperature t
     WHERE round_id = ? AND board_id IS NOT NULL AND ${holds('t')} ORDER BY id`,
  );
  return {
    ofRound: (roundId: number): number | null => ofRound.get(roundId)?.tempC ?? null,
    /** Undefined where none was given for this board alone. */
    ofBoard: (roundId: number, boardId: number): number | null | undefined =>
      ofBoard.get(roundId, boardId)?.tempC,
    /** Those of all boards that have one of their own. */
    ofBoards: (roundId: number): ReadonlyMap<number, number | null> =>
      new Map(ofBoards.all(roundId).map(({ boardId, tempC }) => [boardId, tempC])),
  };
}

export function woodTemperatureWrites(db: Db) {
  const append = rowAppender(db, 'wood_temperature', columns);
  return {
    give: (temperature: WoodTemperature): void => {
      append(temperature);
    },
  };
}
