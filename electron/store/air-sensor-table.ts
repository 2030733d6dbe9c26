import type { SensorKind } from '../../shared-core/contract/air.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import { EVERY_YARD, uuidV5 } from './uuid.ts';
import type { Db } from './yard-file.ts';

interface NewSensor {
  name: string;
  deviceId: string;
  kind: SensorKind;
  closedAt: string | null;
}
export interface SensorRow extends NewSensor {
  id: number;
  version: number;
}
interface Stay {
  sensorId: number;
  placeId: number | null;
  since: string;
}

const newColumns: Columns<NewSensor> = {
  name: 'name',
  deviceId: 'device_id',
  kind: 'kind',
  closedAt: 'closed_at',
};
const columns: Columns<SensorRow> = { id: 'id', version: 'version', ...newColumns };
const stayColumns: Columns<Stay> = { sensorId: 'sensor_id', placeId: 'place_id', since: 'since' };

/** Thermometers and hygrometers of the yard, and where each is. */
export function airSensorReads(db: Db) {
  const select = `SELECT ${selected(columns, 's')} FROM air_sensor s`;
  const list = db.prepare<[], SensorRow>(`${select} WHERE s.closed_at IS NULL ORDER BY s.id`);
  const one = db.prepare<[number], SensorRow>(`${select} WHERE s.id = ?`);
  const byDevice = db.prepare<[string], SensorRow>(
    `${select} WHERE s.device_id = ? ORDER BY s.closed_at IS NOT NULL, s.id DESC LIMIT 1`,
  );
  const stay = db.prepare<[number], Stay>(
    `SELECT ${selected(stayColumns, 't')} FROM air_sensor_stay t WHERE t.sensor_id = ? ORDER BY t.since DESC, t.id DESC LIMIT 1`,
  );
  const staysFrom = db.prepare<[number, string], Stay & { id: number; version: number }>(
    `SELECT t.id, t.version, ${selected(stayColumns, 't')} FROM air_sensor_stay t
     WHERE t.sensor_id = ? AND t.since BETWEEN ? AND '9999' ORDER BY t.since`,
  );
  const staysAt = db.prepare<[number], { id: number; version: number }>(
    'SELECT id, version FROM air_sensor_stay WHERE place_id = ?',
  );
  return {
    /** Whichever sensor was at a place, now or earlier. */
    staysAt: (placeId: number) => staysAt.all(placeId),
    /** Those that were not removed. */
    list: (): SensorRow[] => list.all(),
    get: (id: number): SensorRow | undefined => one.get(id),
    /** That of a device, also where it was removed. */
    find: (deviceId: string): SensorRow | undefined => byDevice.get(deviceId),
    /** Its newest place; undefined where it was never at one. */
    stay: (sensorId: number): Stay | undefined => stay.get(sensorId),
    /** Those that began then or later. */
    staysFrom: (sensorId: number, since: string) => staysFrom.all(sensorId, since),
  };
}

export function airSensorWrites(db: Db, { get }: ReturnType<typeof airSensorReads>) {
  const add = recordAdder<NewSensor>(db, 'air_sensor', newColumns);
  return {
    /** The same device is the same record in every yard. @returns its id */
    add: (sensor: NewSensor): number => add(sensor, uuidV5(EVERY_YARD, `sensor:${sensor.deviceId}`)),
    edit: recordEditor(db, 'air_sensor', newColumns, get),
    addStay: recordAdder(db, 'air_sensor_stay', stayColumns),
    editStay: recordEditor(db, 'air_sensor_stay', stayColumns, () => undefined),
  };
}
