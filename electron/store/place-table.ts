import {
  type ClosedPlace,
  type NewPlace,
  type Place,
  type PlaceRow,
  placeSchema,
} from '../../shared-core/contract/yard.ts';
import type { Evidence } from '../../shared-core/wood/climate/learned-at-places.ts';
import type { LearnedOfPlace } from '../../shared-core/wood/drying/forecast.ts';
import { type Columns, decoded, json, recordAdder, recordEditor, selected } from './columns.ts';
import { STAND_IN_AIR, STAND_IN_AIR_SOURCE } from './stand-ins.ts';
import { isAddedInVain } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

/** The air and its source may be damaged, and each then has a stand-in. */
type PlaceRecord = Place & { version: number; closedAt: string | null; isDamaged?: true };

const columns: Columns<NewPlace> = {
  name: 'name',
  kind: 'kind',
  air: json('air', placeSchema.shape.air, STAND_IN_AIR),
  airSource: json('air_source', placeSchema.shape.airSource, STAND_IN_AIR_SOURCE),
  airMovement: 'air_movement',
};
const editColumns: Columns<NewPlace & { closedAt: string | null }> = { ...columns, closedAt: 'closed_at' };
const recordColumns: Columns<Place & { version: number; closedAt: string | null }> = {
  id: 'id',
  version: 'version',
  ...editColumns,
};

/** Of a board, an offset and its precision. */
type ToldColumns = readonly [offset: string, precision: string];
/** What all forecasts go by, and what the newest of them tell. */
const toldColumns: Record<keyof LearnedOfPlace, { used: ToldColumns; newest: ToldColumns }> = {
  air: { used: ['air_offset_pct', 'air_precision'], newest: ['told_offset_pct', 'told_precision'] },
  surface: {
    used: ['surface_log', 'surface_precision'],
    newest: ['told_surface_log', 'told_surface_precision'],
  },
};

/** SQL for a closed place `p` that boards of the yard, or stacks, are at. */
export const CLOSED_PLACE_IN_USE = `WHERE p.closed_at IS NOT NULL AND (
  EXISTS (SELECT 1 FROM board b INDEXED BY board_by_place WHERE b.place_id = p.id AND b.archived_at IS NULL)
  OR EXISTS (SELECT 1 FROM stack s WHERE s.place_id = p.id AND s.closed_at IS NULL))`;

type Holdings = Pick<PlaceRow, 'stacks' | 'airOffset'>;
/** Boards of one stack at one place, and the readings of how many of them tell of its air. */
type BoardsHere = Holdings['stacks'][number] & { placeId: number; offsets: number };

function holdingsOf(groups: readonly BoardsHere[], offsetPct: number | null): Holdings {
  const boards = groups.reduce((sum, { offsets }) => sum + offsets, 0);
  return {
    stacks: groups.map(({ id, name, boards }) => ({ id, name, boards })),
    airOffset: offsetPct === null ? null : { offsetPct, boards },
  };
}

export function placeReads(db: Db) {
  const select = `SELECT ${selected(recordColumns, 'p')} FROM place p`;
  const list = db.prepare<[], object>(`${select} WHERE p.closed_at IS NULL ORDER BY p.id`);
  const one = db.prepare<[number], object>(`${select} WHERE p.id = ?`);
  const boardsHere = db.prepare<[], BoardsHere>(
    `SELECT b.place_id AS placeId, b.stack_id AS id, (SELECT name FROM stack WHERE id = b.stack_id) AS name,
       count(*) AS boards, count(b.air_offset_pct) AS offsets
     FROM board b INDEXED BY board_by_place WHERE b.archived_at IS NULL GROUP BY b.place_id, b.stack_id`,
  );
  const offsetOf = db
    .prepare<[number], number | null>('SELECT air_offset_pct FROM place WHERE id = ?')
    .pluck();
  const toldWhere = ([offset, precision]: ToldColumns, boards: string) =>
    `SELECT place_id AS placeId, total(${precision}) AS precision, total(${offset} * ${precision}) AS pull
     FROM board ${boards} AND ${offset} IS NOT NULL GROUP BY place_id`;
  const toldOf = (what: keyof LearnedOfPlace) => {
    const { used, newest } = toldColumns[what];
    return {
      told: db.prepare<[], Evidence>(toldWhere(used, 'INDEXED BY board_by_place WHERE TRUE')),
      newlyTold: db.prepare<[], Evidence>(toldWhere(newest, 'INDEXED BY board_by_place WHERE TRUE')),
      toldBy: db.prepare<[string], Evidence>(toldWhere(used, 'WHERE id IN (SELECT value FROM json_each(?))')),
    };
  };
  const lessons = { air: toldOf('air'), surface: toldOf('surface') };
  function toPlace(row: object): PlaceRecord {
    const place = decoded(recordColumns, row);
    const isDamaged = place.air === STAND_IN_AIR || place.airSource === STAND_IN_AIR_SOURCE;
    return isDamaged ? { ...place, isDamaged } : place;
  }
  const closed = db.prepare<[], ClosedPlace>(
    `SELECT id, version, name, kind, closed_at AS closedAt FROM place p
     WHERE closed_at IS NOT NULL AND NOT ${isAddedInVain('p')} ORDER BY closed_at DESC, id DESC`,
  );
  const stacksAt = db
    .prepare<[number], string>(
      'SELECT name FROM stack WHERE place_id = ? AND closed_at IS NULL ORDER BY name',
    )
    .pluck();
  return {
    /** The newest first. */
    closed: (): ClosedPlace[] => closed.all(),
    /** The names of stacks that are there, those without boards as well. */
    stacksAt: (placeId: number): string[] => stacksAt.all(placeId),
    list: (): PlaceRecord[] => list.all().map(toPlace),
    get: (id: number): PlaceRecord | undefined => {
      const row = one.get(id);
      return row && toPlace(row);
    },
    /** How far readings put its EMC from that of its months, % MC; null where none tell, or they agree with its months. */
    airOffsetPct: (placeId: number): number | null => offsetOf.get(placeId) ?? null,
    /** What boards' readings tell of each place, those that left it included, as all forecasts go by. */
    told: (what: keyof LearnedOfPlace): Evidence[] => lessons[what].told.all(),
    /** The same by the newest forecasts. */
    newlyTold: (what: keyof LearnedOfPlace): Evidence[] => lessons[what].newlyTold.all(),
    /** As all forecasts go by, of these boards alone. */
    toldBy: (what: keyof LearnedOfPlace, boardIds: readonly number[]): Evidence[] =>
      lessons[what].toldBy.all(JSON.stringify(boardIds)),
    /** Says of any place what is there. */
    holdings: (): ((placeId: number) => Holdings) => {
      const groups = boardsHere.all();
      return (placeId) =>
        holdingsOf(
          groups.filter((group) => group.placeId === placeId),
          offsetOf.get(placeId) ?? null,
        );
    },
  };
}

export function placeWrites(db: Db, { get }: ReturnType<typeof placeReads>) {
  const putOffset = db.prepare('UPDATE place SET air_offset_pct = ? WHERE id = ?');
  const taken = Object.values(toldColumns).flatMap(({ used, newest }) =>
    used.map((column, index) => [column, newest[index]] as const),
  );
  const takeTold = db.prepare(
    `UPDATE board SET ${taken.map(([used, newest]) => `${used} = ${newest}`).join(', ')}
     WHERE ${taken.map(([used, newest]) => `${used} IS NOT ${newest}`).join(' OR ')}`,
  );
  const dueAll = db.prepare(
    `INSERT INTO outlook_due (board_id, touched) SELECT id, 1 FROM board WHERE archived_at IS NULL
     ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1`,
  );
  const remove = db.prepare('DELETE FROM place WHERE id = ?');
  const unneeded = db
    .prepare<[number], number>(
      `SELECT id FROM place WHERE id = ? AND ${[
        'stack',
        'move',
        'planned_move',
        'air_log',
        'air_sensor_stay',
        'air_exclusion',
        'round',
      ]
        .map((table) => `id NOT IN (SELECT place_id FROM ${table} WHERE place_id IS NOT NULL)`)
        .join(' AND ')}`,
    )
    .pluck();
  const ofOther = ['stack', 'planned_move', 'round', 'air_sensor_stay', 'air_exclusion'].map((table) =>
    db.prepare(`UPDATE ${table} SET place_id = ?, version = version + 1 WHERE place_id = ?`),
  );
  const inUse = db.prepare<[], number>(`SELECT p.id FROM place p ${CLOSED_PLACE_IN_USE}`).pluck();
  return {
    add: recordAdder(db, 'place', columns),
    edit: recordEditor(db, 'place', editColumns, get),
    /** @returns whether nothing was ever there; else nothing was deleted */
    remove: (id: number): boolean => unneeded.get(id) !== undefined && remove.run(id).changes > 0,
    /** Stacks and rounds there, and moves planned to it, are another's; not the moves that were made. */
    give: (id: number, intoId: number): void => {
      for (const table of ofOther) table.run(intoId, id);
    },
    /** Closed ones that boards of the yard, or stacks, are at. */
    closedInUse: (): number[] => inUse.all(),
    /** How far their EMC is from that of their months is another now. All boards are due, as below. */
    restate: (offsets: readonly { placeId: number; offsetPct: number | null }[]): void => {
      for (const { placeId, offsetPct } of offsets) putOffset.run(offsetPct, placeId);
      dueAll.run();
    },
    /** All forecasts go by what the newest tell from now on. All boards are due: each states the lowest EMC of any place. */
    takeNewlyTold: (offsets: readonly { placeId: number; offsetPct: number | null }[]): void => {
      takeTold.run();
      for (const { placeId, offsetPct } of offsets) putOffset.run(offsetPct, placeId);
      dueAll.run();
    },
  };
}
