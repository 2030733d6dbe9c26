import { z } from 'zod';
import { backupReasons } from '../backups/rotation.ts';
import { messageSchema } from '../words/message.ts';

/** What is in a yard file, as a person knows it again. */
const yardContentsSchema = z.object({
  /** Null of a layout that had none yet. */
  uuid: z.uuid().nullable(),
  stacks: z.number().int(),
  boards: z.number().int(),
  readings: z.number().int(),
  pictures: z.number().int(),
  /** Null before the first round. */
  lastRoundAt: z.string().nullable(),
  /** Older ones are brought to this Pintally's when they are opened. */
  layout: z.number().int(),
  isOlderLayout: z.boolean(),
});
export type YardContents = z.infer<typeof yardContentsSchema>;

/** A backup on disk. */
export const backupSchema = z.object({
  file: z.string(),
  /** When it was made, UTC instant. */
  at: z.iso.datetime(),
  why: z.enum(backupReasons),
  sizeBytes: z.number(),
  /** Null where it cannot be read. */
  contents: yardContentsSchema.nullable(),
  /** Of another yard than the person's own; null where it is not known whose it is. */
  isOfOtherYard: z.boolean().nullable(),
  /** Of the own yard as it is or last was, and not as it was before or after a restore. */
  isOfPresent: z.boolean(),
});
export type Backup = z.infer<typeof backupSchema>;

const countSchema = z.number().int();
/** How much of a yard is not in another one that takes its place. */
const missingPartsSchema = z.object({
  readings: countSchema,
  stacks: countSchema,
  boards: countSchema,
  rounds: countSchema,
  places: countSchema,
  ovenChecks: countSchema,
  pictures: countSchema.default(0),
  /** Of readings, oven checks and weights, as what was excluded. Not what follows from a round's date. */
  corrections: countSchema,
  /** Rounds that both have, and whose dates were corrected since. */
  roundDates: countSchema.default(0),
  /** Other records that both have, and that were edited since. */
  edits: countSchema,
  /** Of stacks, boards, places and edited records, the first few by name. */
  names: z.array(z.string()).default([]),
});
/** See `missingPartsSchema`: of each kind, how many, with the first few names. */
export type MissingParts = z.infer<typeof missingPartsSchema>;

/** The last restore, which can be undone. */
export const restoredSchema = z.object({
  /** When what was restored was backed up; null where it was no backup of ours. */
  backedUpAt: z.iso.datetime().nullable(),
  restoredAt: z.iso.datetime(),
  /** The backup made before the restore, or the damaged file that was renamed. */
  undoFile: z.string(),
  /** What took its place is that yard with another one in it. */
  wasMerged: z.boolean().default(false),
  /** The yard before was damaged. */
  wasDamaged: z.boolean().default(false),
  /** What of the yard before is not in the restored one; null where that was damaged, or an earlier Pintally restored it. */
  missing: missingPartsSchema.nullable().default(null),
});
export type Restored = z.infer<typeof restoredSchema>;

/** What is in a yard file that could be restored. */
export const lookSchema = z.object({
  file: z.string(),
  contents: yardContentsSchema,
  sizeBytes: z.number(),
  /** No backup or copy of the person's own yard, as far as it can be known. */
  isOfOtherYard: z.boolean(),
  /** What of the open yard is not in it; null where the open yard cannot be read. */
  missing: missingPartsSchema.nullable(),
});
export type Look = z.infer<typeof lookSchema>;

/** What a person chooses a file or folder for. */
export const filePurposeSchema = z.enum(['copy', 'yard', 'other-yard', 'folder']);
/** `copy` to save one, `yard` to restore one, `other-yard` to bring one in, `folder` for backups. */
export type FilePurpose = z.infer<typeof filePurposeSchema>;

/** So much of a file is in one request or answer. */
export const TRANSFER_PART_BYTES = 1024 * 1024;
/** Larger yard files are not uploaded. */
export const MOST_UPLOAD_BYTES = 4 * 1024 * 1024 * 1024;

/** How the backups are doing. */
export const backupStateSchema = z.object({
  /** Where they are saved, as the person chose; null for the default folder. */
  chosenFolder: z.string().nullable(),
  usualFolder: z.string(),
  /** The chosen folder cannot be written to now, so the default one is used. */
  isAway: z.boolean(),
  /** Why the newest backup could not be made; null where it could. */
  problem: messageSchema.nullable(),
  /** Where the newest backup is, if not in the chosen folder. */
  elsewhere: messageSchema.nullable(),
  restored: restoredSchema.nullable(),
  /** As many backups as may stay for readings that nothing else has: the next deletes the oldest of them. */
  isFullOfOnlyCopies: z.boolean(),
  /** Pictures that the newest backup had no room for. */
  picturesLeftOut: z.number().int(),
  /** Whether files and folders are chosen in the system's own dialogs; a browser downloads and uploads. */
  hasDialogs: z.boolean(),
});
export type BackupState = z.infer<typeof backupStateSchema>;
