import { DAY_MS } from '../time.ts';

/**
 * Why a backup was made. The last four are made before something is replaced: `merge` before another yard comes in,
 * `undo` before a restore or a merge is undone, of the yard that it made. The others take turns.
 */
export const backupReasons = [
  'day',
  'round',
  'asked',
  'recovered',
  'migration',
  'restore',
  'merge',
  'undo',
] as const;
export type BackupReason = (typeof backupReasons)[number];

/** A backup as far as the rotation needs it. */
export interface DatedBackup {
  /** Counts up with each backup of a yard, so that the newest is known whatever the clock said. */
  number: number;
  /** Local ISO day on which it was made, by the clock of then. */
  day: string;
  why: BackupReason;
}

/** Of the newest day, so many of the newest stay: a clock that always says 1970 must not fill the disk. */
const OF_NEWEST_DAY = 24;
const DAYS = 7;
const WEEKS = 4;
const MONTHS = 12;
/** So many stay whatever their days: the one before the newest is from before what was done last. */
const NEWEST = 2;
/** Of those made before a migration, and of those made before a restore, a merge, or the undoing of one. */
const BEFORE = 3;
/** So many stay only because of their readings: each restore of an older backup can add one. */
export const MOST_ONLY_COPIES = 20;

/**
 * Which backups stay: all of the newest day (24 at most), the first and the last of each of 7 days, the last of each of
 * 4 weeks and 12 months, the 2 newest, and the 3 newest made before a migration and before a restore or a merge. More may stay: see `onlyCopies`.
 *
 * Only days that have a backup count, from the newest backup back, and none is compared with today. So a clock that was
 * set wrong costs one day, one week and one month at most, and the newest backup always stays.
 *
 * @param backups  of one yard, in any order
 */
export function backupsToKeep<B extends DatedBackup>(backups: readonly B[]): Set<B> {
  const newestFirst = [...backups].sort((a, b) => b.number - a.number || b.day.localeCompare(a.day));
  const inTurn = newestFirst.filter(({ why }) => !['migration', 'restore', 'merge', 'undo'].includes(why));
  const days = newestOfEach(inTurn, DAYS, ({ day }) => day);
  const firsts = days.flatMap((last) => inTurn.findLast(({ day }) => day === last.day) ?? []);
  const ofNewestDay = newestFirst.filter(({ day }) => day === newestFirst[0]?.day);
  const before = (...reasons: BackupReason[]) =>
    newestFirst.filter(({ why }) => reasons.includes(why)).slice(0, BEFORE);
  return new Set([
    ...newestFirst.slice(0, NEWEST),
    ...ofNewestDay.slice(0, OF_NEWEST_DAY),
    ...days,
    ...firsts,
    ...newestOfEach(inTurn, WEEKS, ({ day }) => weekOf(day)),
    ...newestOfEach(inTurn, MONTHS, ({ day }) => day.slice(0, 7)),
    ...before('migration'),
    ...before('restore', 'merge', 'undo'),
  ]);
}

/**
 * Which backups stay although their turn is over: those with readings that are in no other that stays. So no reading
 * that was ever backed up goes with the rotation, as after an older backup was restored. 20 at most, the newest first.
 *
 * @param backups      of one yard, in any order
 * @param isElsewhere  whether all readings of a backup are in these others
 */
export function onlyCopies<B extends DatedBackup>(
  backups: readonly B[],
  isElsewhere: (backup: B, others: readonly B[]) => boolean,
): B[] {
  const inTurn = backupsToKeep(backups);
  const newestFirst = [...inTurn].sort((a, b) => b.number - a.number);
  const found: B[] = [];
  for (const backup of [...backups].sort((a, b) => b.number - a.number)) {
    if (found.length === MOST_ONLY_COPIES) break;
    if (!inTurn.has(backup) && !isElsewhere(backup, [...newestFirst, ...found])) found.push(backup);
  }
  return found;
}

/** The newest of each of the first so many stretches of time. */
function newestOfEach<B>(newestFirst: readonly B[], most: number, stretchOf: (backup: B) => string): B[] {
  const newest = new Map<string, B>();
  for (const backup of newestFirst) {
    const stretch = stretchOf(backup);
    if (!newest.has(stretch)) newest.set(stretch, backup);
    if (newest.size === most) break;
  }
  return [...newest.values()];
}

/** The Monday of a day's week, as a local ISO day. */
function weekOf(day: string): string {
  const sinceMonday = (new Date(day).getUTCDay() + 6) % 7;
  return new Date(Date.parse(day) - sinceMonday * DAY_MS).toISOString().slice(0, 10);
}
