import { type MeterDescription, meterDescriptionSchema } from '../../shared-core/gatt/meter-description.ts';
import { type Columns, rowAppender } from './columns.ts';
import { parsedOnce } from './parsed-once.ts';
import { readJson } from './read-json.ts';
import { EVERY_YARD, uuidV5 } from './uuid.ts';
import type { Db } from './yard-file.ts';

export interface MeterRow {
  id: number;
  kind: 'bluetooth' | 'simulated';
  deviceId: string;
  name: string;
  /** By its newest profile; null where nobody knows how to read it. */
  description: MeterDescription | null;
}

/** One version of how a meter is read. */
export interface MeterProfileRow extends Pick<MeterRow, 'description'> {
  meterId: number | null;
}

interface MeterRecord extends Omit<MeterRow, 'description'> {
  record: string | null;
}

interface NewProfile {
  meterId: number;
  version: number;
  /** JSON. */
  record: string;
  madeAt: string;
}

const profileColumns: Columns<NewProfile> = {
  meterId: 'meter_id',
  version: 'version',
  record: 'record',
  madeAt: 'made_at',
};

/** Undefined where the disk damaged it. */
const savedDescription = (text: string) => readJson(meterDescriptionSchema.nullable(), text);
const descriptionOf = parsedOnce(
  // A damaged one is treated as missing: the person describes the meter again.
  (text: string) => savedDescription(text) ?? null,
);
const toMeter = ({ record, ...row }: MeterRecord): MeterRow => ({
  ...row,
  description: record === null ? null : descriptionOf(record),
});

/** The newest profile of a meter, for a join of `meter_profile p`. */
const newestOf = (meterId: string): string =>
  `p.id = (SELECT id FROM meter_profile WHERE meter_id = ${meterId} ORDER BY version DESC LIMIT 1)`;

/** Meters, each with how it is read; a reading keeps the profile that it was taken with. */
export function meterReads(db: Db) {
  const select = `SELECT m.id, m.kind, m.device_id AS deviceId, m.name, p.record
    FROM meter m LEFT JOIN meter_profile p ON ${newestOf('m.id')}`;
  const one = db.prepare<[number], MeterRecord>(`${select} WHERE m.id = ?`);
  const byDevice = db.prepare<[string, string], MeterRecord>(
    `${select} WHERE m.kind = ? AND m.device_id = ?`,
  );
  const all = db.prepare<[], MeterRecord>(`${select} ORDER BY m.id`);
  const newestProfile = db.prepare<[number], { id: number }>(
    `SELECT p.id FROM meter_profile p WHERE ${newestOf('?')}`,
  );
  const profile = db.prepare<[number], { meterId: number | null; record: string }>(
    'SELECT p.meter_id AS meterId, p.record FROM meter_profile p WHERE p.id = ?',
  );
  const boardsReadWith = db.prepare<[number], { boardId: number }>(
    `SELECT DISTINCT g.board_id AS boardId FROM meter_profile p JOIN reading g ON g.meter_profile_id = p.id
     WHERE p.meter_id = ?`,
  );
  return {
    get: (id: number): MeterRow | undefined => {
      const row = one.get(id);
      return row && toMeter(row);
    },
    find: (kind: MeterRow['kind'], deviceId: string): MeterRow | undefined => {
      const row = byDevice.get(kind, deviceId);
      return row && toMeter(row);
    },
    /** Names of the meters whose description the disk damaged. */
    damaged: (): string[] =>
      all
        .all()
        .filter(({ record }) => record !== null && savedDescription(record) === undefined)
        .map(({ name }) => name),
    /** Undefined where there is no such profile. */
    profile: (id: number): MeterProfileRow | undefined => {
      const row = profile.get(id);
      return row && { meterId: row.meterId, description: descriptionOf(row.record) };
    },
    /** Whose profile it is; null for none, and for one that is lost. */
    ofProfile: (profileId: number | null): number | null =>
      profileId === null ? null : (profile.get(profileId)?.meterId ?? null),
    /** What a reading taken with the meter now refers to; null where `meterId` is. */
    profileIdOf: (meterId: number | null): number | null =>
      meterId === null ? null : (newestProfile.get(meterId)?.id ?? null),
    /** Boards with a reading of that meter's. */
    boardsReadWith: (meterId: number): number[] => boardsReadWith.all(meterId).map((row) => row.boardId),
  };
}

export function meterWrites(db: Db, { find }: ReturnType<typeof meterReads>) {
  const put = db.prepare(
    `INSERT INTO meter (uuid, kind, device_id, name) VALUES (?, ?, ?, ?)
     ON CONFLICT (kind, device_id) DO UPDATE SET name = excluded.name, version = version + 1
       WHERE name <> excluded.name`,
  );
  const newest = db.prepare<[number], Pick<NewProfile, 'version' | 'record'>>(
    `SELECT p.version, p.record FROM meter_profile p WHERE ${newestOf('?')}`,
  );
  const addProfile = rowAppender(db, 'meter_profile', profileColumns);
  return {
    /** A meter as it was met; a new version of its profile where it is read otherwise than before. */
    put: db.transaction((meter: Omit<MeterRow, 'id'>, at: string): MeterRow => {
      const { kind, deviceId, name, description } = meter;
      // The same device is the same record in every yard.
      put.run(uuidV5(EVERY_YARD, `meter:${kind}:${deviceId}`), kind, deviceId, name);
      const { id: meterId } = find(kind, deviceId) as MeterRow;
      const before = newest.get(meterId);
      const record = JSON.stringify(description);
      if (record !== (before?.record ?? 'null')) {
        addProfile({ meterId, version: (before?.version ?? 0) + 1, record, madeAt: at });
      }
      return find(kind, deviceId) as MeterRow;
    }),
  };
}
