import { z } from 'zod';
import {
  backupSchema,
  backupStateSchema,
  filePurposeSchema,
  lookSchema,
  MOST_UPLOAD_BYTES,
  TRANSFER_PART_BYTES,
} from '../backups.ts';
import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { says } from '../validation.ts';
import { yardInfoSchema } from '../yard.ts';

const pathSchema = z
  .string()
  .trim()
  .min(1, says('validation.path-missing'))
  .max(4000, says('validation.path-too-long'));
const offsetSchema = z.number().int().min(0).max(MOST_UPLOAD_BYTES);
const topics = (): Topic[] => ['backups'];

/** Copies of the person's own yard file. The demo yard has none. */
export const backupRequests = {
  'backups.look': ofMachine(query({ input: z.object({ file: pathSchema }), output: lookSchema, topics })),
  /** Of a backup or of another yard file; the current yard is backed up first. */
  'backups.restore': ofMachine(
    command({ input: z.object({ file: pathSchema }), output: yardInfoSchema, topics: () => ['yard'] }),
  ),
  'backups.undoRestore': ofMachine(
    command({ input: nothingSchema, output: yardInfoSchema, topics: () => ['yard'] }),
  ),
  /** `isTaken`: there is such a file, and nothing was saved. */
  'backups.saveCopy': ofMachine(
    command({
      input: z.object({ file: pathSchema, replaces: z.boolean() }),
      output: z.object({ isTaken: z.boolean() }),
      topics: () => [],
    }),
  ),
  /** In the system's own dialog; null where the person chose none. */
  'backups.chooseFile': ofMachine(
    command({
      input: z.object({ purpose: filePurposeSchema }),
      output: z.object({ path: z.string().nullable() }),
      topics: () => [],
    }),
  ),
  /** A yard file of the browser's, part by part; then `file` can be restored. The window's next one takes its place. */
  'backups.beginUpload': ofMachine(
    command({
      input: z.object({
        sizeBytes: z.number().int().min(1).max(MOST_UPLOAD_BYTES, says('validation.upload-too-large')),
      }),
      output: z.object({ upload: z.uuid(), file: z.string() }),
      topics: () => [],
    }),
  ),
  /** Each part follows the one before. */
  'backups.addToUpload': ofMachine(
    command({
      input: z.object({
        upload: z.uuid(),
        offset: offsetSchema,
        base64: z
          .base64()
          .min(1)
          .max(Math.ceil(TRANSFER_PART_BYTES / 3) * 4),
      }),
      output: z.null(),
      topics: () => [],
    }),
  ),
  'backups.dropUpload': ofMachine(command({ input: nothingSchema, output: z.null(), topics: () => [] })),
  /** A checked copy of the yard, for the browser. */
  'backups.beginDownload': ofMachine(
    command({
      input: nothingSchema,
      output: z.object({ download: z.uuid(), sizeBytes: z.number().int(), fileName: z.string() }),
      topics: () => [],
    }),
  ),
  'backups.nextOfDownload': ofMachine(
    command({
      input: z.object({ download: z.uuid(), offset: offsetSchema }),
      output: z.object({ base64: z.base64() }),
      topics: () => [],
    }),
  ),
  'backups.dropDownload': ofMachine(command({ input: nothingSchema, output: z.null(), topics: () => [] })),
  'backups.state': ofMachine(query({ input: nothingSchema, output: backupStateSchema, topics })),
  /** The newest first. */
  'backups.list': ofMachine(query({ input: nothingSchema, output: z.array(backupSchema), topics })),
  'backups.make': ofMachine(command({ input: nothingSchema, output: backupStateSchema, topics })),
  /** Null for the default folder. */
  'backups.setFolder': ofMachine(
    command({
      input: z.object({ folder: pathSchema.nullable() }),
      /** `isBackedUp`: the chosen folder has a backup of the open yard. */
      output: backupStateSchema.extend({ isBackedUp: z.boolean() }),
      topics,
    }),
  ),
};
