import { z } from 'zod';
import { command, query } from '../request-kinds.ts';
import { boardTopics } from '../topics.ts';
import { moveSchema, rowIdSchema, versionSchema } from '../yard.ts';
import { moveAnswersSchema, placeSinceSchema } from './boards.ts';
import { workSchema } from './work.ts';

/** Whether it is done to the moves of all boards that were moved together with this one. */
const together = z.boolean().default(false);

/** Corrections of where a board has been. */
export const moveRequests = {
  /**
   * Of how many boards one act made this move, and they still have it so: to the same place, on the same day. 1 where it
   * is of this board alone.
   */
  'moves.together': query({
    input: z.object({ id: rowIdSchema }),
    output: z.object({ boards: z.number().int() }),
    topics: () => ['boards'],
  }),
  'moves.edit': command({
    input: moveAnswersSchema.extend({
      id: rowIdSchema,
      basedOn: versionSchema,
      changed: z.object({
        placeId: rowIdSchema.optional(),
        /** Both of when it was. */
        when: placeSinceSchema.pick({ since: true, isDayOnly: true }).optional(),
      }),
      together,
      work: workSchema,
    }),
    output: moveSchema,
    topics: ({ together }, { boardId }) => (together ? ['yard'] : ['stacks', ...boardTopics([boardId])]),
  }),
  /** Refused of the first: a board is always somewhere. */
  'moves.delete': command({
    input: z.object({ id: rowIdSchema, basedOn: versionSchema, together, work: workSchema }),
    output: z.object({ act: z.uuid(), boardIds: z.array(rowIdSchema) }),
    topics: (_, { boardIds }) => ['stacks', ...boardTopics(boardIds)],
  }),
};
