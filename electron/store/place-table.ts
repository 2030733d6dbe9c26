import { type NewPlace, type Place, type PlaceRow, placeSchema } from '../../shared-core/contract/yard.ts';
import type { AirEvidence } from '../../shared-core/wood/climate/learned-air.ts';
import { type Columns, decoded, json, recordAdder, recordEditor, selected } from './columns.ts';
import { STAND_IN_AIR, STAND_IN_AIR_SOURCE } from './stand-ins.ts';
import type { Db } from './yard-file.ts';

/** The air and its source may be damaged, and each then has a stand-in. */
type PlaceRecord = Place & { version: number; isDamaged?: true };

const columns: Columns<NewPlace> = {
  name: 'name',
  kind: 'kind',
  air: json('air', placeSchema.shape.air, STAND_IN_AIR),
  airSource: json('air_source', placeSchema.shape.airSource, STAND_IN_AIR_SOURCE),
  airMovement: 'air_movement',
};
const recordColumns: Columns<Place & { version: number }> = { id: 'id', version: 'version', ...columns };

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
  /** @param kind  whether what forecasts go by, or what the newest of them tell */
  const toldWhere = (kind: 'air' | 'told', boards: string) =>
    `SELECT place_id AS placeId, total(${kind}_precision) AS precision,
       total(${kind}_offset_pct * ${kind}_precision) AS pull
     FROM board ${boards} AND archived_at IS NULL AND ${kind}_offset_pct IS NOT NULL GROUP BY place_id`;
  const told = db.prepare<[], AirEvidence>(toldWhere('air', 'INDEXED BY board_by_place WHERE TRUE'));
  const newlyTold = db.prepare<[], AirEvidence>(toldWhere('told', 'INDEXED BY board_by_place WHERE TRUE'));
  const toldBy = db.prepare<[string], AirEvidence>(
    toldWhere('air', 'WHERE id IN (SELECT value FROM json_each(?))'),
  );
  function toPlace(row: object): PlaceRecord {
    const place = decoded(recordColumns, row);
    const isDamaged = place.air === STAND_IN_AIR || place.airSource === STAND_IN_AIR_SOURCE;
    return isDamaged ? { ...place, isDamaged } : place;
  }
  return {
    list: (): PlaceRecord[] => list.all().map(toPlace),
    get: (id: number): PlaceRecord | undefined => {
      const row = one.get(id);
      return row && toPlace(row);
    },
    /** How far readings put its EMC from that of its months, % MC; null where none tell, or they agree with its months. */
    airOffsetPct: (placeId: number): number | null => offsetOf.get(placeId) ?? null,
    /** What boards' readings tell of the air of each place, as all forecasts go by. */
    airTold: (): AirEvidence[] => told.all(),
    /** The same by the newest forecasts. */
    airNewlyTold: (): AirEvidence[] => newlyTold.all(),
    /** As all forecasts go by, of these boards alone. */
    airToldBy: (boardIds: readonly number[]): AirEvidence[] => toldBy.all(JSON.stringify(boardIds)),
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
  const takeTold = db.prepare(
    `UPDATE board SET air_offset_pct = told_offset_pct, air_precision = told_precision
     WHERE air_offset_pct IS NOT told_offset_pct OR air_precision IS NOT told_precision`,
  );
  const dueAll = db.prepare(
    `INSERT INTO outlook_due (board_id, touched) SELECT id, 1 FROM board WHERE archived_at IS NULL
     ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1`,
  );
  return {
    add: recordAdder(db, 'place', columns),
    edit: recordEditor(db, 'place', columns, get),
    /** All forecasts go by what the newest tell from now on. All boards are due: each states the lowest EMC of any place. */
    takeNewlyTold: (offsets: readonly { placeId: number; offsetPct: number | null }[]): void => {
      takeTold.run();
      for (const { placeId, offsetPct } of offsets) putOffset.run(offsetPct, placeId);
      dueAll.run();
    },
  };
}
