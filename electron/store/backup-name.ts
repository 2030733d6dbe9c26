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
  `^pintally-(\\d{4}-\\d\\d-\\d\\d)T(\\d\\d)-(\\d\\d)-(\\d\\d)Z-(${backupReasons.join('|')})-(\\d{5,9})-([0-9a-f]{8})\\.sqlite$`,
);

/** A name that Windows takes as well, and that sorts by date. */
export function backupFileName({ at, why, number, yardId }: BackupName): string {
  const instant = at.replace(/\.\d+Z$/, 'Z').replaceAll(':', '-');
  return `pintally-${instant}-${why}-${String(number).padStart(5, '0')}-${yardId}.sqlite`;
}

/** Null for any other file. */
export function readBackupName(fileName: string): BackupName | null {
  const [, day, hour, minute, second, why, number, yardId] = pattern.exec(fileName) ?? [];
  if (day === undefined || yardId === undefined) return null;
  const at = `${day}T${hour}:${minute}:${second}.000Z`;
  if (Number.isNaN(Date.parse(at))) return null;
  return { at, why: why as BackupReason, number: Number(number), yardId };
}
