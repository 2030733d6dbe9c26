import { z } from 'zod';
import { messageSchema } from '../../words/message.ts';
import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';
import { salvageReportSchema } from '../salvage.ts';
import { yardInfoSchema } from '../yard.ts';

/** What happened to the open yard's file. */
export const recoveryRequests = {
  /** Opens a new file with what can be read of the damaged one, which is renamed and left in the folder. */
  'recovery.salvage': ofMachine(
    command({ input: nothingSchema, output: yardInfoSchema, topics: () => ['yard'] }),
  ),
  /** What was saved then; null where the yard never was damaged. */
  'recovery.report': ofMachine(
    query({ input: nothingSchema, output: salvageReportSchema.nullable(), topics: () => ['yardNotes'] }),
  ),
  /** When the newest change was made that the file was seen with, UTC; null where that is not known. */
  'recovery.newestActAt': ofMachine(
    query({ input: nothingSchema, output: z.iso.datetime().nullable(), topics: () => ['yard'] }),
  ),
  /** What a person must know of it, until they dismiss it. */
  'recovery.notes': ofMachine(
    query({ input: nothingSchema, output: z.array(messageSchema), topics: () => ['yardNotes'] }),
  ),
  'recovery.dismissNote': ofMachine(
    command({
      input: z.object({ code: z.string().max(100) }),
      output: z.null(),
      topics: () => ['yardNotes'],
    }),
  ),
};
