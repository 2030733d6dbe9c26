import { type NewPlace, type Place, placeSchema } from '../../shared-core/contract/yard.ts';
import { type Columns, decoded, json, recordAdder, recordEditor, selected } from './columns.ts';
import type { Db } from './yard-file.ts';

type PlaceRecord = Place & { version: number };

const columns: Columns<NewPlace> = {
  name: 'name',
  kind: 'kind',
  air: json('air', (value) => placeSchema.shape.air.parse(value)),
  airSource: json('air_source', (value) => placeSchema.shape.airSource.parse(value)),
};
const recordColumns: Columns<PlaceRecord> = { id: 'id', version: 'version', ...columns };

export function placeReads(db: Db) {
  const select = `SELECT ${selected(recordColumns, 'p')} FROM place p`;
  const list = db.prepare<[], object>(`${select} WHERE p.closed_at IS NULL ORDER BY p.id`);
  const one = db.prepare<[number], object>(`${select} WHERE p.id = ?`);
  const toPlace = (row: object): PlaceRecord => decoded(recordColumns, row);
  return {
    list: (): PlaceRecord[] => list.all().map(toPlace),
    get: (id: number): PlaceRecord | undefined => {
      const row = one.get(id);
      return row && toPlace(row);
    },
  };
}

export function placeWrites(db: Db, { get }: ReturnType<typeof placeReads>) {
  return {
    add: recordAdder(db, 'place', columns),
    edit: recordEditor(db, 'place', columns, get),
  };
}
