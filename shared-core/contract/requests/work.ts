import { z } from 'zod';
import { command, nothingSchema, ofWindow } from '../request-kinds.ts';

/** Of work that may take long: by it the window follows it, and can stop it. Null where it does neither. */
export const workSchema = z.uuid().nullable().default(null);

/** Work that takes long: a request gives it an id, `work.progress` tells how far it is. */
export const workRequests = {
  /** Stops it: the request is refused, and everything is as it was before. Of work that is done, nothing. */
  'work.cancel': ofWindow(
    command({ input: z.object({ work: z.uuid() }), output: nothingSchema, topics: () => [] }),
  ),
};
