import { type Place, placeSchema } from '../../shared-core/contract/yard.ts';
import { parsedOnce } from './parsed-once.ts';
import type { Db } from './yard-file.ts';

interface PlaceRecord {
  id: number;
  name: string;
  kind: string;
  air: string;
}

const airOf = parsedOnce((text) => placeSchema.shape.air.parse(JSON.parse(text)));
const toPlace = (row: PlaceRecord): Place => ({
  id: row.id,
  name: row.name,
  kind: placeSchema.shape.kind.parse(row.kind),
  air: airOf(row.air),
});

export function placeTable(db: Db) {
  const list = db.prepare<[], PlaceRecord>('SELECT id, name, kind, air FROM place ORDER BY id');
  const one = db.prepare<[number], PlaceRecord>('SELECT id, name, kind, air FROM place WHERE id = ?');
  const add = db.prepare('INSERT INTO place (name, kind, air) VALUES (?, ?, ?)');
  const change = db.prepare('UPDATE place SET name = ?, kind = ?, air = ? WHERE id = ?');
  return {
    list: (): Place[] => list.all().map(toPlace),
    get: (id: number): Place | undefined => {
      const row = one.get(id);
      return row && toPlace(row);
    },
    add: (place: Omit<Place, 'id'>): number =>
      Number(add.run(place.name, place.kind, JSON.stringify(place.air)).lastInsertRowid),
    change: (place: Place): void => {
      change.run(place.name, place.kind, JSON.stringify(place.air), place.id);
    },
  };
}
