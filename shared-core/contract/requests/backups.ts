import { z } from 'zod';
import { backupSchema, backupStateSchema } from '../backups.ts';
import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';

const topics = (): Topic[] => ['backups'];

/** Copies of the person's own yard file. The demo yard has none. */
export const backupRequests = {
  'backups.state': ofMachine(query({ input: nothingSchema, output: backupStateSchema, topics })),
  /** The newest first. */
  'backups.list': ofMachine(query({ input: nothingSchema, output: z.array(backupSchema), topics })),
  'backups.make': ofMachine(command({ input: nothingSchema, output: backupStateSchema, topics })),
  /** Null for the usual folder. */
  'backups.setFolder': ofMachine(
    command({
      input: z.object({ folder: z.string().trim().min(1).max(4000).nullable() }),
      output: backupStateSchema,
      topics,
    }),
  ),
};
