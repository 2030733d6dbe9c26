import { type NewPlace, type Place, type PlaceRow, placeSchema } from '../../shared-core/contract/yard.ts';
import { SAME_EMC_PCT } from '../../shared-core/wood/climate/climate.ts';
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
/** Boards of one stack at one place, and the sum of what the readings of some of them say of its air. */
type BoardsHere = Holdings['stacks'][number] & { placeId: number; offsets: number; sumPct: number };

function holdingsOf(groups: readonly BoardsHere[]): Holdings {
  const boards = groups.reduce((sum, { offsets }) => sum + offsets, 0);
  const meanPct = groups.reduce((sum, { sumPct }) => sum + sumPct, 0) / boards;
  return {
    stacks: groups.map(({ id, name, boards }) => ({ id, name, boards })),
    airOffset: boards > 0 && Math.abs(meanPct) >= SAME_EMC_PCT ? { meanPct, boards } : null,
  };
}

export function placeReads(db: Db) {
  const select = `SELECT ${selected(recordColumns, 'p')} FROM place p`;
  const list = db.prepare<[], object>(`${select} WHERE p.closed_at IS NULL ORDER BY p.id`);
  const one = db.prepare<[number], object>(`${select} WHERE p.id = ?`);
  const boardsHere = db.prepare<[], BoardsHere>(
    `SELECT b.place_id AS placeId, b.stack_id AS id, (SELECT name FROM stack WHERE id = b.stack_id) AS name,
       count(*) AS boards, count(b.air_offset_pct) AS offsets, total(b.air_offset_pct) AS sumPct
     FROM board b INDEXED BY board_by_place WHERE b.archived_at IS NULL GROUP BY b.place_id, b.stack_id`,
  );
  const offsetsAt = db.prepare<[number], { meanPct: number | null }>(
    `SELECT avg(air_offset_pct) AS meanPct
     FROM board INDEXED BY board_by_place WHERE place_id = ? AND archived_at IS NULL`,
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
    /** As `holdings` has it, of one place; null where no readings tell, or they agree with its months. */
    airOffsetPct: (placeId: number): number | null => {
      const meanPct = offsetsAt.get(placeId)?.meanPct ?? 0;
      return Math.abs(meanPct) >= SAME_EMC_PCT ? meanPct : null;
    },
    /** Says of any place what is there. */
    holdings: (): ((placeId: number) => Holdings) => {
      const groups = boardsHere.all();
      return (placeId) => holdingsOf(groups.filter((group) => group.placeId === placeId));
    },
  };
}

export function placeWrites(db: Db, { get }: ReturnType<typeof placeReads>) {
  return {
    add: recordAdder(db, 'place', columns),
    edit: recordEditor(db, 'place', columns, get),
  };
}
