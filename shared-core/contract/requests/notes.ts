import { z } from 'zod';
import { type Subject, type SubjectPlace, subjectPlaceSchema, subjectSchema } from '../notes.ts';
import { command, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { noteSchema } from '../yard.ts';

const noteOfSchema = z.object({ note: noteSchema });

/** What a note or pictures are shown with. */
export const subjectTopics = ({ kind, id }: Subject): Topic[] =>
  kind === 'reading' ? ['boards'] : [`${kind}:${id}`, 'stacks'];

/** Whatever shows a board, stack, round or reading. */
export const placeTopics = ({ boardId, stackId, roundId }: SubjectPlace): Topic[] => [
  'stacks',
  `stack:${stackId}`,
  ...(boardId === null ? [] : (['boards', `board:${boardId}`] as const)),
  ...(roundId === null ? [] : ([`round:${roundId}`] as const)),
];

export const noteRequests = {
  /** Empty where nobody wrote one. */
  'notes.get': query({
    input: z.object({ subject: subjectSchema }),
    output: noteOfSchema,
    topics: ({ subject }) => subjectTopics(subject),
  }),
  /** A conflict where another note than the one that the window shows was saved meanwhile. */
  'notes.set': command({
    input: z.object({ subject: subjectSchema, note: noteSchema, shown: noteSchema }),
    output: subjectPlaceSchema,
    topics: (_, place) => placeTopics(place),
  }),
};
