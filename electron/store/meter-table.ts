import { type MeterDescription, meterDescriptionSchema } from '../../shared-core/gatt/meter-description.ts';
import { parsedOnce } from './parsed-once.ts';
import type { Db } from './yard-file.ts';

export interface MeterRow {
  id: number;
  kind: 'bluetooth' | 'simulated';
  deviceId: string;
  name: string;
  description: MeterDescription | null;
}

type MeterRecord = Omit<MeterRow, 'description'> & { description: string | null };

const descriptionOf = parsedOnce((text) => meterDescriptionSchema.parse(JSON.parse(text)));
const toMeter = (row: MeterRecord): MeterRow => ({
  ...row,
  description: row.description === null ? null : descriptionOf(row.description),
});

export function meterTable(db: Db) {
  const fields = 'id, kind, device_id AS deviceId, name, description FROM meter';
  const one = db.prepare<[number], MeterRecord>(`SELECT ${fields} WHERE id = ?`);
  const byDevice = db.prepare<[string, string], MeterRecord>(
    `SELECT ${fields} WHERE kind = ? AND device_id = ?`,
  );
  const put = db.prepare(
    `INSERT INTO meter (kind, device_id, name, description) VALUES (?, ?, ?, ?)
     ON CONFLICT (kind, device_id) DO UPDATE SET name = excluded.name, description = excluded.description`,
  );
  const find = (kind: MeterRow['kind'], deviceId: string): MeterRow | undefined => {
    const row = byDevice.get(kind, deviceId);
    return row && toMeter(row);
  };
  return {
    get: (id: number): MeterRow | undefined => {
      const row = one.get(id);
      return row && toMeter(row);
    },
    find,
    put: (meter: Omit<MeterRow, 'id'>): MeterRow => {
      put.run(
        meter.kind,
        meter.deviceId,
        meter.name,
        meter.description === null ? null : JSON.stringify(meter.description),
      );
      return find(meter.kind, meter.deviceId) as MeterRow;
    },
  };
}
