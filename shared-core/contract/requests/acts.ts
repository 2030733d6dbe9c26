import { z } from 'zod';
import { command } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { workSchema } from './work.ts';

const input = z.object({
  /** Any of the acts that did, undid and redid it. */
  act: z.uuid(),
  work: workSchema,
});
const output = z.object({
  /** The act that was undone or redone. */
  of: z.uuid(),
});
/** Any record may be another. */
const topics = (): Topic[] => ['yard'];

/** What was done in the yard: every act can be undone, and redone, as long as nothing that it changed was changed since. */
export const actRequests = {
  'acts.undo': command({ input, output, topics }),
  'acts.redo': command({ input, output, topics }),
};
