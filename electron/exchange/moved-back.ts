import type { YardRecord } from '../../shared-core/exchange/yard-tables.ts';
import { EVERY_YARD, uuidV5 } from '../store/uuid.ts';
import type { Db } from '../store/yard-file.ts';
import type { RecordReads, RecordWrites } from '../store/yard-records.ts';
import { other, type Side } from './differences.ts';

/** A reading with its board, and what holds of where it was moved from and to. */
interface Placed {
  uuid: string;
  board: string;
  code: string;
  /** The UUID of the reading that it was on another board; null for one that was not moved. */
  movedFrom: string | null;
  /** The amendment that says whether it is excluded, and the UUID of the reading that it became; null where there is none. */
  excludedBy: string | null;
  movedTo: string | null;
}

/** A board that was entered by mistake, and on which nobody looks for a reading. */
const isLetGo = (board: string): string =>
  `coalesce(${board}.archived_why ->> 'code', '') IN ('deleted', 'undone')`;

/** Amendments that hold for a reading on any board. */
const OF_READING = ['raw', 'isAbove', 'woodTempC', 'note'];

function placedIn(db: Db, side: Side) {
  const undone = `(SELECT uuid FROM ${side}.undone_row)`;
  const newest = (what: string, field: string) =>
    `(SELECT ${what} FROM ${side}.amendment k WHERE k.reading_id = g.id AND k.field = '${field}' AND k.uuid NOT IN ${undone}
      ORDER BY k.id DESC LIMIT 1)`;
  const one = db.prepare<[string], Placed>(
    `SELECT g.uuid, b.uuid AS board, b.code, ${newest(`k.value ->> '$'`, 'movedFrom')} AS movedFrom,
       ${newest('k.uuid', 'excluded')} AS excludedBy, ${newest(`k.value ->> 'to'`, 'excluded')} AS movedTo
     FROM ${side}.reading g JOIN ${side}.board b ON b.id = g.board_id WHERE g.uuid = ? AND g.uuid NOT IN ${undone}`,
  );
  const onBoard = db
    .prepare<[string], string>(
      `SELECT g.uuid FROM ${side}.reading g WHERE g.board_id = (SELECT id FROM ${side}.board WHERE uuid = ?)
         AND g.id IN (SELECT reading_id FROM ${side}.amendment WHERE field = 'movedFrom') ORDER BY g.uuid`,
    )
    .pluck();
  return {
    /** All that were moved to a board. */
    movedTo: (board: string): Placed[] => onBoard.all(board).flatMap((uuid) => one.get(uuid) ?? []),
    /**
     * The reading that one was on the last board on its way which is there; null where it is there itself by now, or on
     * none. Whatever a file says, this ends: each must say that it went on to the one after it, and the last went nowhere.
     */
    home: (from: Placed, isThere: (board: string) => boolean): Placed | null => {
      let at = from;
      if (at.movedTo !== null) return null;
      while (at.movedFrom !== null) {
        const origin = one.get(at.movedFrom);
        if (origin?.movedTo !== at.uuid) return null;
        if (isThere(origin.board)) return origin;
        at = origin;
      }
      return null;
    },
  };
}

function letGoIn(db: Db, side: Side): (board: string) => boolean {
  const find = db.prepare<[string]>(`SELECT 1 FROM ${side}.board b WHERE b.uuid = ? AND ${isLetGo('b')}`);
  return (board) => find.get(board) !== undefined;
}

/**
 * Readings that one file moved to a board which the other deleted, as nothing was on it there: where the board stays deleted,
 * they go back to the board that they came from.
 */
export function movedBack(db: Db) {
  const placed = { main: placedIn(db, 'main'), theirs: placedIn(db, 'theirs') };
  const letGo = { main: letGoIn(db, 'main'), theirs: letGoIn(db, 'theirs') };
  const boardsLetGo = db
    .prepare<[], string>(
      `SELECT b.uuid FROM main.board b WHERE ${isLetGo('b')}
         AND EXISTS (SELECT 1 FROM main.reading g WHERE g.board_id = b.id) ORDER BY b.uuid`,
    )
    .pluck();
  // A depth that came with the move is that of the other board's spot; one given since is a person's.
  const saidOf = db
    .prepare<[string], string>(
      `SELECT k.uuid FROM main.amendment k WHERE k.reading_id = (SELECT id FROM main.reading WHERE uuid = ?)
         AND (k.field IN ('${OF_READING.join("', '")}', 'excluded') OR k.field = 'depthMm' AND k.at <>
           (SELECT f.at FROM main.amendment f WHERE f.reading_id = k.reading_id AND f.field = 'movedFrom'))
         AND k.uuid NOT IN (SELECT uuid FROM main.undone_row)
       ORDER BY k.id`,
    )
    .pluck();
  const picturesOf = db
    .prepare<[string], string>(
      'SELECT uuid FROM main.picture WHERE reading_id = (SELECT id FROM main.reading WHERE uuid = ?)',
    )
    .pluck();

  return {
    /**
     * The IDs of the boards to which readings go back, each once for each reading, if a board that is there in one file is
     * deleted as in the other.
     * @param board  its UUID
     */
    from: (side: Side, board: string): string[] => {
      if (!letGo[other(side)](board)) return [];
      const isThere = (uuid: string) => uuid !== board && !letGo.main(uuid) && !letGo.theirs(uuid);
      const { movedTo, home } = placed[side];
      return movedTo(board).flatMap((reading) => home(reading, isThere)?.code ?? []);
    },
    /** Moves them back, with what was said of them there. To be called when it is known which boards stay deleted. */
    move: (mine: RecordReads, writes: RecordWrites): void => {
      const isThere = (uuid: string) => !letGo.main(uuid);
      for (const board of boardsLetGo.all()) {
        for (const reading of placed.main.movedTo(board)) {
          const home = placed.main.home(reading, isThere);
          if (home !== null) moveBack(reading, home, mine, writes);
        }
      }
    },
  };

  function moveBack(reading: Placed, home: Placed, mine: RecordReads, writes: RecordWrites): void {
    /** The same in whichever file it is done. */
    const say = (said: YardRecord): void => {
      const uuid = uuidV5(EVERY_YARD, `back:${reading.uuid}:${said.uuid}`);
      // It was said before, and that was undone.
      if (mine.one('amendments', uuid)) writes.remove('undoneRows', uuid);
      else writes.add('amendments', { ...said, reading: home.uuid, uuid });
    };
    say({ ...(mine.one('amendments', String(home.excludedBy)) as YardRecord), value: null });
    for (const uuid of saidOf.all(reading.uuid)) say(mine.one('amendments', uuid) as YardRecord);
    for (const uuid of picturesOf.all(reading.uuid)) writes.edit('pictures', uuid, { reading: home.uuid });
  }
}
export type MovedBack = ReturnType<typeof movedBack>;
