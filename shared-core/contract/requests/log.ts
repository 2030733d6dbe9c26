import { z } from 'zod';
import { command, nothingSchema, ofMachine } from '../request-kinds.ts';

export const logRequests = {
  /** Shows the person what was logged of faults. */
  'log.open': ofMachine(
    command({
      input: nothingSchema,
      output: z.object({
        file: z.string(),
        /** The newest part of it, for the window to show; null where the computer opened the file. */
        text: z.string().nullable(),
        /** False where what happened last could not be written. */
        isWritten: z.boolean(),
      }),
      topics: () => [],
    }),
  ),
};
