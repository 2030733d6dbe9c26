import { keptRecord } from './lineage.ts';
import type { RoundRow } from './round-table.ts';
import type { Db } from './yard-file.ts';

/** A board, archived or not, with what the program's own lists of boards leave out. */
export interface BoardToExport {
  id: number;
  uuid: string;
  endUseName: string;
  /** The ID of the board that it was cut from. */
  cutFrom: string | null;
}

/** The readings of one board in one round belong together: they are corrected together. */
export interface ReadTogether {
  boardId: number;
  /** What was entered twice and merged is one board: by its ID it is named, and by its species all of it is corrected. */
  keptId: number;
  roundId: number;
  code: string;
  stackName: string;
  roundStartedAt: string;
  readings: number;
}

/** The day on which the newest forecast of a board was made, a local ISO day. */
export interface Forecasted {
  boardId: number;
  madeOn: string;
}

/** What exports go through, in the order of their rows. */
export function rowsToExport(db: Db) {
  return {
    boards: db.prepare<[], BoardToExport>(
      `SELECT b.id, b.uuid, coalesce(e.name, e.id) AS endUseName,
         (SELECT p.code FROM board_origin o JOIN board p ON p.id = o.parent_id
          WHERE o.child_id = b.id AND o.how <> 'merged') AS cutFrom
       FROM board b JOIN stack s ON s.id = b.stack_id JOIN end_use e ON e.id = s.end_use_id ORDER BY b.id`,
    ),
    readTogether: db.prepare<[], ReadTogether>(
      `SELECT g.board_id AS boardId, b.id AS keptId, g.round_id AS roundId, b.code, s.name AS stackName,
         r.started_at AS roundStartedAt, count(*) AS readings
       FROM reading g JOIN board b ON b.id = ${keptRecord('g.board_id')} JOIN stack s ON s.id = b.stack_id
       JOIN round r ON r.id = g.round_id
       GROUP BY g.board_id, g.round_id ORDER BY g.board_id, r.started_at, r.id`,
    ),
    readingUuids: db.prepare<[number, number], { id: number; uuid: string }>(
      'SELECT id, uuid FROM reading WHERE board_id = ? AND round_id = ?',
    ),
    meterOfProfile: db.prepare<[number], { meterName: string | null; profileVersion: number }>(
      `SELECT m.name AS meterName, p.version AS profileVersion FROM meter_profile p
       LEFT JOIN meter m ON m.id = p.meter_id WHERE p.id = ?`,
    ),
    roundStarts: db.prepare<[], { id: number } & Pick<RoundRow, 'startedAt' | 'datedBy'>>(
      'SELECT id, started_at AS startedAt, dated_by AS datedBy FROM round',
    ),
    forecasts: db.prepare<[], Forecasted>(
      `SELECT o.board_id AS boardId, o.made_on AS madeOn FROM outlook o
       WHERE o.record IS NOT NULL ORDER BY o.board_id`,
    ),
  };
}
