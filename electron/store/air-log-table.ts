import { DAY_MS, HOUR_MS } from '../../shared-core/time.ts';
import type { LoggedAir } from '../../shared-core/wood/climate/measured-air.ts';
import { type Columns, recordAdder, rowAppender } from './columns.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

interface AirLog {
  placeId: number | null;
  sensorId: number | null;
  at: string;
  tempC: number;
  rh: number;
}

interface Exclusion {
  placeId: number;
  logId: number | null;
  day: string | null;
}

const exclusionColumns: Columns<Exclusion> = { placeId: 'place_id', logId: 'log_id', day: 'day' };

const columns: Columns<AirLog> = {
  placeId: 'place_id',
  sensorId: 'sensor_id',
  at: 'at',
  tempC: 'temp_c',
  rh: 'rh',
};

/** SQL for whether what was typed or imported holds: it was not undone, deleted or replaced. @param row  its alias */
const isKept = (row: string): string =>
  `(SELECT ${holds(row)} AND NOT EXISTS (SELECT 1 FROM air_exclusion x WHERE x.log_id = ${row}.id))`;

/** SQL for what was logged at a place since an instant: by sensors while they were there, and by hand. */
const AT_PLACE = `
  SELECT l.at, l.temp_c AS tempC, l.rh, 0 AS isOfPlace, l.id, l.act_id AS actId
    FROM (SELECT sensor_id, place_id, since, lead(since) OVER (PARTITION BY sensor_id ORDER BY since, id) AS until
      FROM air_sensor_stay) t
    JOIN air_log l ON l.sensor_id = t.sensor_id
      AND l.at BETWEEN max(t.since, @from) AND min(coalesce(t.until, '9999'), @until) AND l.at IS NOT t.until
    WHERE t.place_id = @placeId
  UNION ALL SELECT l.at, l.temp_c, l.rh, 1, l.id, l.act_id FROM air_log l
    WHERE l.place_id = @placeId AND l.at BETWEEN @from AND @until AND ${isKept('l')}
  ORDER BY 1`;

/** A row of a log as it is on file, which `asLog` reads. */
export interface RowAtPlace {
  at: string;
  tempC: number;
  rh: number;
  id: number;
  /** Typed or imported for the place; else of a sensor. */
  isOfPlace: 0 | 1;
  /** The act that saved it; null of a sensor. */
  actId: number | null;
}

/** Values that came with others so near are a log. */
const LOG_WITHIN_MS = 6 * HOUR_MS;

/** A value of a log, or of a day. */
export type LoggedRow = LoggedAir & { id: number; isOutdated: boolean };

/**
 * Of the values of days, by their ids: those for whose day (UTC) a later act has another, as once it was redone, or two
 * yards came together. An act may import several for a day, each of its own time.
 */
function outdatedOf(ofDays: readonly { id: number; actId: number | null; atMs: number }[]): Set<number> {
  const outdated = new Set<number>();
  const byDay = new Map<number, (typeof ofDays)[number][]>();
  for (const row of ofDays) {
    const day = Math.floor(row.atMs / DAY_MS);
    const others = byDay.get(day) ?? [];
    byDay.set(day, [...others, row]);
    for (const other of others) {
      if (other.actId !== row.actId || other.atMs === row.atMs) outdated.add(Math.min(other.id, row.id));
    }
  }
  return outdated;
}

/** Tells the values of days from those of logs. @param rows  all that are near in time to each other, rising */
export function asLog(rows: readonly RowAtPlace[]): LoggedRow[] {
  const all = rows.map(({ at, ...row }) => ({ ...row, atMs: Date.parse(at) }));
  const times = [...new Set(all.filter(({ isOfPlace }) => isOfPlace === 1).map(({ atMs }) => atMs))];
  const alone = new Set(
    times.filter((atMs, at) => {
      const [before = -Infinity, after = Infinity] = [times[at - 1], times[at + 1]];
      return Math.min(atMs - before, after - atMs) > LOG_WITHIN_MS;
    }),
  );
  const isOfDay = ({ isOfPlace, atMs }: (typeof all)[number]) => isOfPlace === 1 && alone.has(atMs);
  const outdated = outdatedOf(all.filter(isOfDay));
  return all.map((row) => {
    const { atMs, tempC, rh, id } = row;
    return { atMs, tempC, rh, id, isOfDay: isOfDay(row), isOutdated: outdated.has(id) };
  });
}

/** What was measured of the air of places. Rows are only ever added. */
export function airLogReads(db: Db) {
  const atPlace = db.prepare<{ placeId: number; from: string; until: string }, RowAtPlace>(AT_PLACE);
  const stamp = db
    .prepare<[], string>(
      `SELECT (SELECT coalesce(sum(version), 0) || '.' || count(*) || '.' || coalesce(max(id), 0) FROM air_sensor_stay) ||
         '/' || (SELECT coalesce(group_concat(air_act), '') FROM place)`,
    )
    .pluck();
  const newest = db.prepare<[], number>('SELECT coalesce(max(id), 0) FROM air_log').pluck();
  const since = db.prepare<[number], string | null>('SELECT min(at) FROM air_log WHERE id > ?').pluck();
  const newestAt = db.prepare<
    { placeId: number; from: string; until: string },
    { at: string; tempC: number; rh: number }
  >(`SELECT at, tempC, rh FROM (${AT_PLACE}) ORDER BY at DESC, id DESC LIMIT 1`);
  const ofSensor = db.prepare<[number, string], { at: string; tempC: number; rh: number }>(
    'SELECT at, temp_c AS tempC, rh FROM air_log WHERE sensor_id = ? AND at <= ? ORDER BY at DESC LIMIT 1',
  );
  const isLater = db
    .prepare<{ than: string }, 0 | 1>(
      `SELECT EXISTS (SELECT 1 FROM air_sensor s
         WHERE (SELECT max(l.at) FROM air_log l WHERE l.sensor_id = s.id) > @than)
       OR EXISTS (SELECT 1 FROM place p
         WHERE (SELECT max(l.at) FROM air_log l WHERE l.place_id = p.id) > @than)`,
    )
    .pluck();
  const bounds = db.prepare<[], { first: string | null; last: string | null }>(
    `SELECT min(first) AS first, max(last) AS last FROM (
       SELECT (SELECT min(l.at) FROM air_log l WHERE l.sensor_id = s.id) AS first,
         (SELECT max(l.at) FROM air_log l WHERE l.sensor_id = s.id) AS last FROM air_sensor s
       UNION ALL SELECT (SELECT min(l.at) FROM air_log l WHERE l.place_id = p.id),
         (SELECT max(l.at) FROM air_log l WHERE l.place_id = p.id) FROM place p)`,
  );
  const has = db
    .prepare<[number, string, string], number>(
      'SELECT 1 FROM air_log WHERE sensor_id = ? AND at BETWEEN ? AND ? LIMIT 1',
    )
    .pluck();
  const onDay = db.prepare<[number, string], { tempC: number; rh: number }>(
    `SELECT temp_c AS tempC, rh FROM air_log l WHERE place_id = ? AND at = ? AND ${isKept('l')}`,
  );
  const ofPlace = db.prepare<{ placeId: number; from: string }, Omit<RowAtPlace, 'isOfPlace'>>(
    `SELECT id, at, temp_c AS tempC, rh, act_id AS actId FROM air_log l
     WHERE place_id = @placeId AND at >= @from AND ${isKept('l')} ORDER BY at, id`,
  );
  const typed = db.prepare<[number], { placeId: number; at: string; tempC: number; rh: number }>(
    `SELECT place_id AS placeId, at, temp_c AS tempC, rh FROM air_log l
     WHERE id = ? AND place_id IS NOT NULL AND ${isKept('l')}`,
  );
  const excludedDays = db
    .prepare<[number], string>(
      'SELECT DISTINCT day FROM air_exclusion WHERE place_id = ? AND day IS NOT NULL',
    )
    .pluck();
  const sources = db.prepare<[], { id: number; sensorName: string | null; request: string | null }>(
    `SELECT l.id, s.name AS sensorName, a.request FROM air_log l LEFT JOIN air_sensor s ON s.id = l.sensor_id
      LEFT JOIN act a ON a.id = l.act_id`,
  );
  return {
    /** By the id of a value its sensor, or else the request that saved it. */
    sources: () => new Map(sources.all().map(({ id, ...source }) => [id, source])),
    /** What was typed and imported for a place. */
    ofPlace: (placeId: number) => ofPlace.all({ placeId, from: '' }),
    /** Values of a whole day that were typed or imported, rising in time. @param from  UTC, ISO 8601 */
    typedAt: (placeId: number, from: string) =>
      asLog(ofPlace.all({ placeId, from }).map((row) => ({ ...row, isOfPlace: 1 }))).filter(
        ({ isOfDay }) => isOfDay,
      ),
    /** One of those; undefined where it was deleted or replaced. */
    typed: (id: number) => typed.get(id),
    /** Days at a place, "2026-05-01" by UTC, on which nothing of sensors is used because a person says so. */
    excludedDays: (placeId: number): string[] => excludedDays.all(placeId),
    /** Rising in time. @param from  UTC, ISO 8601; '' for all */
    atPlace: (placeId: number, from: string) => asLog(atPlace.all({ placeId, from, until: '9999' })),
    /** A part of the same. @param until  included */
    partAtPlace: (placeId: number, from: string, until: string): RowAtPlace[] =>
      atPlace.all({ placeId, from, until }),
    /** The first and the last instant of any log; null without one. */
    bounds: (): { first: string; last: string } | null => {
      const { first, last } = bounds.get() ?? { first: null, last: null };
      return first === null || last === null ? null : { first, last };
    },
    /** Whether anything was logged by a clock that was ahead. */
    isLater: (than: string): boolean => isLater.get({ than }) === 1,
    /** Another one wherever rows of earlier days may count elsewhere, or no longer. */
    stamp: (): string => stamp.get() as string,
    /** The id of the newest row; 0 without any. */
    newestId: (): number => newest.get() ?? 0,
    /** The earliest instant of the rows added since; null where there are none. */
    earliestSince: (id: number): string | null => since.get(id) ?? null,
    /** The newest value at a place, and of a sensor. @param until  what is later is of a clock that was ahead */
    newestAt: (placeId: number, until: string) => newestAt.get({ placeId, from: '', until }),
    newestOf: (sensorId: number, until: string) => ofSensor.get(sensorId, until),
    /** Not by a clock that was ahead: its values are of another time. */
    isLoggedBetween: (sensorId: number, from: string, to: string): boolean =>
      has.get(sensorId, from, to) !== undefined,
    /** Whether a person gave the same for a place and instant. */
    isTyped: ({
      placeId,
      at,
      tempC,
      rh,
    }: {
      placeId: number;
      at: string;
      tempC: number;
      rh: number;
    }): boolean => onDay.all(placeId, at).some((known) => known.tempC === tempC && known.rh === rh),
  };
}

export function airLogWrites(db: Db) {
  const add = rowAppender(db, 'air_log', columns);
  const exclude = recordAdder<Exclusion>(db, 'air_exclusion', exclusionColumns);
  const include = db.prepare('DELETE FROM air_exclusion WHERE place_id = ? AND day = ?');
  return {
    add: (row: AirLog): void => {
      add(row);
    },
    /** It is not used any more, because it was deleted or replaced. */
    drop: (placeId: number, logId: number): void => {
      exclude({ placeId, logId, day: null });
    },
    excludeDay: (placeId: number, day: string): void => {
      exclude({ placeId, logId: null, day });
    },
    includeDay: (placeId: number, day: string): void => {
      include.run(placeId, day);
    },
  };
}
