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
  /** Of another yard than the one that is open. */
  isOfOtherYard: z.boolean(),
});
export type Backup = z.infer<typeof backupSchema>;

/** The last restore, which can be undone. */
export const restoredSchema = z.object({
  /** When what was restored was backed up; null where it was no backup of ours. */
  backedUpAt: z.iso.datetime().nullable(),
  restoredAt: z.iso.datetime(),
  /** The backup made before the restore. */
  undoFile: z.string(),
  /** Readings of the yard before that are not in the restored one. */
  readingsLeftOut: z.number().int(),
});
export type Restored = z.infer<typeof restoredSchema>;

/** What is in a yard file that could be restored. */
export const lookSchema = z.object({
  file: z.string(),
  contents: yardContentsSchema,
  sizeBytes: z.number(),
  /** Readings of the open yard that are not in it; null where the open yard cannot be read. */
  readingsLeftOut: z.number().int().nullable(),
});
export type Look = z.infer<typeof lookSchema>;

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
});
export type BackupState = z.infer<typeof backupStateSchema>;
