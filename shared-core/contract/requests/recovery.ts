import { z } from 'zod';
import { messageSchema } from '../../words/message.ts';
import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';

/** What happened to the open yard's file. */
export const recoveryRequests = {
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
