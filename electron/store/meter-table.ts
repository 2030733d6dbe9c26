import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { MeterDescription } from '../../shared-core/gatt/meter-description.ts';
import {
  ofVersion1,
  savedDescriptionSchema,
  version1Schema,
} from '../../shared-core/gatt/saved-description.ts';
import {
  type MeterProfile,
  meterProfileSchema,
  typedUnit,
  unknownProfile,
} from '../../shared-core/probing/readings/meter-profile.ts';
import { meterBasisSchema, type ReadingUnit } from '../../shared-core/wood/moisture/corrected.ts';
import { type Columns, recordEditor, rowAppender } from './columns.ts';
import { parsedOnce } from './parsed-once.ts';
import { readJson } from './read-json.ts';
import { holds } from './undone-rows.ts';
import { EVERY_YARD, uuidV5 } from './uuid.ts';
import type { Db } from './yard-file.ts';

/** What one version of a meter's profile holds. */
export interface MeterRecord {
  /** How its bytes are read; null where unknown, and of a hand meter. */
  description: MeterDescription | null;
  /** What its values mean; null where it was not asked. */
  profile: MeterProfile | null;
  /** What a check found it to be off by, points or decades of ohms; 0 where its values are not corrected for that. */
  off: number;
}

/** The unit of a meter's values, whether it sends them or they are typed. */
export const unitOf = ({ description, profile }: Pick<MeterRecord, 'description' | 'profile'>): ReadingUnit =>
  description?.unit ?? typedUnit(profile);

/** A meter by the newest version of its profile. */
export interface MeterRow extends MeterRecord {
  id: number;
  version: number;
  /** `typed`: a hand meter, whose values are typed. */
  kind: 'bluetooth' | 'simulated' | 'typed';
  deviceId: string;
  name: string;
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

/** Nobody knows anything. */
export const NO_RECORD: MeterRecord = { description: null, profile: null, off: 0 };

/** Earlier, a version was the description alone, with the species and temperature that the scale was made for. */
const earlierSchema = version1Schema
  .extend({ basis: meterBasisSchema.nullable() })
  .transform(({ basis, ...description }): MeterRecord => {
    const scale = basis && ({ kind: 'species', speciesId: null, ...basis } as const);
    return {
      ...NO_RECORD,
      description: ofVersion1(description),
      profile: scale && { ...unknownProfile, scale },
    };
  });
const recordSchema = z.union([
  z.object({
    description: savedDescriptionSchema.nullable(),
    profile: meterProfileSchema.nullable(),
    // Left out before meters were checked.
    off: z.number().default(0),
  }),
  earlierSchema,
  z.null().transform(() => NO_RECORD),
]);

/** Undefined where the disk damaged it. */
const savedRecord = (text: string): MeterRecord | undefined => readJson(recordSchema, text);
const recordOf = parsedOnce(
  // A damaged one is treated as missing: the person describes the meter again.
  (text: string): MeterRecord => savedRecord(text) ?? NO_RECORD,
);

interface Row extends Omit<MeterRow, keyof MeterRecord> {
  record: string | null;
}
const toMeter = ({ record, ...row }: Row): MeterRow => ({
  ...row,
  ...(record === null ? NO_RECORD : recordOf(record)),
});

/** SQL for the profile that holds for a reading `g`. */
export const PROFILE_NOW = `(SELECT CAST(coalesce((SELECT k.value FROM amendment k WHERE k.reading_id = g.id
  AND k.field = 'meterProfileId' AND ${holds('k')} ORDER BY k.id DESC LIMIT 1), g.meter_profile_id) AS INTEGER))`;
/** SQL for the versions of the profile of `@meterId`. */
export const VERSIONS = 'SELECT id FROM meter_profile WHERE meter_id = @meterId';
/** SQL for the ids of readings that were taken with `@meterId`, and of those that were moved to it. */
const TAKEN_WITH_METER = `SELECT id FROM reading WHERE meter_profile_id IN (${VERSIONS})`;
const MOVED_TO_METER = `SELECT reading_id FROM amendment
  WHERE field = 'meterProfileId' AND CAST(value AS INTEGER) IN (${VERSIONS})`;

/** The newest profile of a meter, for a join of `meter_profile p`. */
const newestOf = (meterId: string): string =>
  `p.id = (SELECT id FROM meter_profile v WHERE v.meter_id = ${meterId} AND ${holds('v')}
    ORDER BY v.version DESC LIMIT 1)`;

/** Meters, each with what its values mean; a reading keeps the version of that which it was taken with. */
export function meterReads(db: Db) {
  const select = `SELECT m.id, m.version, m.kind, m.device_id AS deviceId, m.name, p.record
    FROM meter m LEFT JOIN meter_profile p ON ${newestOf('m.id')}`;
  const one = db.prepare<[number], Row>(`${select} WHERE m.id = ?`);
  const byDevice = db.prepare<[string, string], Row>(
    `${select} WHERE m.kind = ? AND m.device_id = ? AND m.undone_at IS NULL`,
  );
  const isHidden = db
    .prepare<[string, string], number>(
      'SELECT EXISTS (SELECT 1 FROM meter WHERE kind = ? AND device_id = ? AND undone_at IS NOT NULL)',
    )
    .pluck();
  const all = db.prepare<[], Row>(
    `${select} WHERE m.undone_at IS NULL AND m.closed_at IS NULL ORDER BY m.id`,
  );
  const closed = db.prepare<[], Row>(
    `${select} WHERE m.undone_at IS NULL AND m.closed_at IS NOT NULL ORDER BY m.id`,
  );
  const isClosed = db
    .prepare<[number], number>('SELECT closed_at IS NOT NULL FROM meter WHERE id = ?')
    .pluck();
  const newestProfile = db.prepare<[number], { id: number }>(
    `SELECT p.id FROM meter_profile p WHERE ${newestOf('?')}`,
  );
  /** Whether a test block or oven checks refer to it, or this holds. */
  const used = (orHolds: string) =>
    db
      .prepare<{ meterId: number }, number>(
        `SELECT EXISTS (SELECT 1 FROM oven_check WHERE meter_profile_id IN (${VERSIONS}))
          OR EXISTS (SELECT 1 FROM test_block WHERE meter_id = @meterId AND closed_at IS NULL)
          OR ${orHolds}`,
      )
      .pluck();
  const usedEver = used(`(SELECT EXISTS (${TAKEN_WITH_METER}) OR EXISTS (${MOVED_TO_METER}))`);
  const usedNow = used(
    `(SELECT EXISTS (SELECT 1 FROM reading g
       WHERE g.id IN (${TAKEN_WITH_METER} UNION ${MOVED_TO_METER}) AND ${PROFILE_NOW} IN (${VERSIONS})))`,
  );
  const profile = db.prepare<[number], { meterId: number | null; record: string }>(
    'SELECT p.meter_id AS meterId, p.record FROM meter_profile p WHERE p.id = ?',
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
    /** Whether the act that added the meter of an address was undone. */
    isUndone: (kind: MeterRow['kind'], deviceId: string): boolean => isHidden.get(kind, deviceId) === 1,
    /** In the order they were first met. */
    all: (): MeterRow[] => all.all().map(toMeter),
    /** Those that are no longer owned. */
    closed: (): MeterRow[] => closed.all().map(toMeter),
    isClosed: (meterId: number): boolean => isClosed.get(meterId) === 1,
    /** Whether a reading or an oven check refers to it, or ever did. */
    isUsed: (meterId: number): boolean => usedEver.get({ meterId }) === 1,
    /** Whether one does now. */
    isUsedNow: (meterId: number): boolean => usedNow.get({ meterId }) === 1,
    /** Names of the meters whose newest version the disk damaged. */
    damaged: (): string[] =>
      all
        .all()
        .filter(({ record }) => record !== null && savedRecord(record) === undefined)
        .map(({ name }) => name),
    /** One version of a meter's profile; undefined where it is lost. */
    version: (profileId: number): (MeterRecord & { meterId: number | null }) | undefined => {
      const row = profile.get(profileId);
      return row && { meterId: row.meterId, ...recordOf(row.record) };
    },
    /** Whose profile it is; null for none, and for one that is lost. */
    ofProfile: (profileId: number | null): number | null =>
      profileId === null ? null : (profile.get(profileId)?.meterId ?? null),
    /** What a reading taken with the meter now refers to; null where `meterId` is. */
    profileIdOf: (meterId: number | null): number | null =>
      meterId === null ? null : (newestProfile.get(meterId)?.id ?? null),
  };
}

export function meterWrites(db: Db, { get, find, version }: ReturnType<typeof meterReads>) {
  const put = db.prepare(
    `INSERT INTO meter (uuid, kind, device_id, name) VALUES (?, ?, ?, ?)
     ON CONFLICT (kind, device_id) DO UPDATE SET name = excluded.name, undone_at = NULL, closed_at = NULL,
       version = version + 1
       WHERE name <> excluded.name OR undone_at IS NOT NULL OR closed_at IS NOT NULL`,
  );
  const freeAddress = db.prepare<[string, string]>(
    `UPDATE meter SET device_id = uuid || ' ' || device_id, version = version + 1 WHERE kind = ? AND device_id = ?`,
  );
  const isOfOther = db
    .prepare<[string, string], number>(
      'SELECT EXISTS (SELECT 1 FROM meter WHERE uuid = ? AND device_id <> ?)',
    )
    .pluck();
  const newest = db.prepare<[number], Pick<NewProfile, 'record'>>(
    `SELECT p.record FROM meter_profile p WHERE ${newestOf('?')}`,
  );
  const versions = db.prepare<[number], { id: number; record: string }>(
    `SELECT v.id, v.record FROM meter_profile v WHERE v.meter_id = ? AND ${holds('v')} ORDER BY v.version DESC`,
  );
  /** Equal records have equal texts, also where an earlier Pintally saved one of them. */
  const textOf = (record: MeterRecord): string => JSON.stringify(recordSchema.parse(record));
  /** Of those that were undone, too. */
  const lastVersion = db
    .prepare<[number], number | null>('SELECT max(version) FROM meter_profile WHERE meter_id = ?')
    .pluck();
  const addProfile = rowAppender(db, 'meter_profile', profileColumns);

  /** A new version where something of it is another than before. */
  function change(meterId: number, changed: Partial<MeterRecord>, at: string): void {
    const before = newest.get(meterId);
    const known = before ? recordOf(before.record) : NO_RECORD;
    const next = { ...known, ...changed };
    // What a check found is in the unit of the values that it found it in.
    if (unitOf(next) !== unitOf(known)) next.off = 0;
    const record = textOf(next);
    if (record === textOf(known)) return;
    addProfile({ meterId, version: (lastVersion.get(meterId) ?? 0) + 1, record, madeAt: at });
  }

  return {
    /** A meter as it was met, and how its bytes are read. */
    put: db.transaction(
      (
        { kind, deviceId, name, description }: Pick<MeterRow, 'kind' | 'deviceId' | 'name' | 'description'>,
        at: string,
      ): MeterRow => {
        // The same device is the same record in every yard. A meter that has another address now keeps that of its first.
        const ofDevice = uuidV5(EVERY_YARD, `meter:${kind}:${deviceId}`);
        // One that has an address after another had it is the same in every yard, too, by its name.
        const uuid =
          isOfOther.get(ofDevice, deviceId) === 1
            ? uuidV5(EVERY_YARD, `meter:${kind}:${deviceId}:${name}`)
            : ofDevice;
        put.run(uuid, kind, deviceId, name);
        change(find(kind, deviceId)!.id, { description }, at);
        return find(kind, deviceId)!;
      },
    ),
    /** Another meter has the address now. What has it in the file gets one that no device has. */
    freeAddress: (kind: MeterRow['kind'], deviceId: string): void => {
      freeAddress.run(kind, deviceId);
    },
    /** A hand meter. */
    addTyped: (name: string, profile: MeterProfile, at: string): number => {
      const deviceId = randomUUID();
      const id = Number(put.run(randomUUID(), 'typed', deviceId, name).lastInsertRowid);
      change(id, { profile }, at);
      return id;
    },
    edit: recordEditor<Pick<MeterRow, 'name' | 'deviceId'> & { closedAt: string | null }, MeterRow>(
      db,
      'meter',
      { name: 'name', deviceId: 'device_id', closedAt: 'closed_at' },
      get,
    ),
    setProfile: (meterId: number, profile: MeterProfile, at: string): void =>
      change(meterId, { profile }, at),
    /** By a file of a meter. */
    setUp: (meterId: number, by: Pick<MeterRecord, 'description' | 'profile'>, at: string): void =>
      change(meterId, by, at),
    /** What its values are corrected by from now on, points or decades of ohms. */
    setOff: (meterId: number, off: number, at: string): void => change(meterId, { off }, at),
    /** The version that says what this one does, but for `off`; the newest of its meter stays the newest. */
    versionWithOff: (profileId: number, off: number, at: string): number | null => {
      const { meterId, ...own } = version(profileId) ?? { meterId: null, ...NO_RECORD };
      if (meterId === null) return profileId;
      const before = newest.get(meterId);
      const known = before ? recordOf(before.record) : NO_RECORD;
      const text = textOf({ ...own, off });
      const same = () =>
        versions.all(meterId).find(({ record }) => textOf(recordOf(record)) === text)?.id ?? null;
      if (same() === null) {
        change(meterId, { ...own, off }, at);
        change(meterId, known, at);
      }
      // In the other unit than the newest's, none can be made.
      return same() ?? profileId;
    },
  };
}
