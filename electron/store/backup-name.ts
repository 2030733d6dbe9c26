import { type BackupReason, backupReasons } from '../../shared-core/backups/rotation.ts';

/** What a backup's name says of it. */
export interface BackupName {
  /** UTC instant, to the second. */
  at: string;
  why: BackupReason;
  /** Counts up with each backup of a yard. */
  number: number;
  /** Under which the backups of one yard belong together: eight letters of its UUID. */
  yardId: string;
}

/** Of a yard of a layout that had no UUID yet. */
export const UNKNOWN_YARD = '00000000';

const pattern = new RegExp(
  `^pintally-(\\d{4}-\\d\\d-\\d\\d)T(\\d\\d)-(\\d\\d)-(\\d\\d)Z-(${backupReasons.join('|')})-(\\d{5,8})-([0-9a-f]{8})\\.sqlite$`,
);

/** Past this a name would be none of ours: whatever a file in the folder says, a backup that is made can be listed. */
const MOST_NUMBER = 99_999_999;
/** So that its local day has four digits for the year, whatever the clock says. */
const EARLIEST_MS = Date.UTC(1000, 0, 2);
const LATEST_MS = Date.UTC(9999, 11, 30);

/** The number of the backup after those with these. */
export const numberAfter = (numbers: readonly number[]): number =>
  Math.min(Math.max(0, ...numbers) + 1, MOST_NUMBER);

/** A name that Windows takes as well, and that sorts by date. */
export function backupFileName({ at, why, number, yardId }: BackupName): string {
  const bounded = new Date(Math.min(Math.max(Date.parse(at), EARLIEST_MS), LATEST_MS)).toISOString();
  const instant = bounded.replace(/\.\d+Z$/, 'Z').replaceAll(':', '-');
  return `pintally-${instant}-${why}-${String(number).padStart(5, '0')}-${yardId}.sqlite`;
}

/** Null for any other file. */
export function readBackupName(fileName: string): BackupName | null {
  const [, day, hour, minute, second, why, number, yardId] = pattern.exec(fileName) ?? [];
  if (day === undefined || yardId === undefined) return null;
  const at = `${day}T${hour}:${minute}:${second}.000Z`;
  if (!(Date.parse(at) >= EARLIEST_MS && Date.parse(at) <= LATEST_MS)) return null;
  return { at, why: why as BackupReason, number: Number(number), yardId };
}
