import { z } from 'zod';
import { instantSchema } from '../../time.ts';
import { messageSchema } from '../../words/message.ts';
import { command, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { rowIdSchema } from '../yard.ts';
import { workSchema } from './work.ts';

const listedActSchema = z.object({
  id: z.uuid(),
  at: instantSchema,
  /** What it did, with the names that its records had then. */
  line: messageSchema,
  isUndone: z.boolean(),
});
export type ListedAct = z.infer<typeof listedActSchema>;

const input = z.object({
  /** Any of the acts that did, undid and redid it. */
  act: z.uuid(),
  work: workSchema,
});
/** The act that was undone or redone. */
const output = listedActSchema;
/** Any record may be another. */
const topics = (): Topic[] => ['yard'];

/** What was done in the yard: every act can be undone, and redone, as long as nothing that it changed was changed since. */
export const actRequests = {
  /** The newest first: of the yard, or those that changed a board. */
  'acts.list': query({
    input: z.object({
      boardId: rowIdSchema.nullable(),
      /** As an earlier page named it; null for the first. */
      before: z.number().int().nullable(),
      limit: z.number().int().min(1).max(200),
    }),
    output: z.object({ acts: z.array(listedActSchema), next: z.number().int().nullable() }),
    topics: () => ['acts'],
  }),
  'acts.undo': command({ input, output, topics }),
  'acts.redo': command({ input, output, topics }),
};
