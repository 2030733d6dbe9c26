import { z } from 'zod';
import { backupSchema, backupStateSchema, lookSchema } from '../backups.ts';
import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { says } from '../validation.ts';
import { yardInfoSchema } from '../yard.ts';

const pathSchema = z
  .string()
  .trim()
  .min(1, says('validation.path-missing'))
  .max(4000, says('validation.path-too-long'));
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
  'backups.state': ofMachine(query({ input: nothingSchema, output: backupStateSchema, topics })),
  /** The newest first. */
  'backups.list': ofMachine(query({ input: nothingSchema, output: z.array(backupSchema), topics })),
  'backups.make': ofMachine(command({ input: nothingSchema, output: backupStateSchema, topics })),
  /** Null for the default folder. */
  'backups.setFolder': ofMachine(
    command({
      input: z.object({ folder: pathSchema.nullable() }),
      output: backupStateSchema,
      topics,
    }),
  ),
};
