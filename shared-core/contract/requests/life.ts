import { z } from 'zod';
import { instantSchema } from '../../time.ts';
import { leavingNoteSchema, leavingSchema } from '../archive.ts';
import { command } from '../request-kinds.ts';
import { boardTopics } from '../topics.ts';
import { boardCodeSchema, rowIdSchema } from '../yard.ts';
import { someBoards } from './boards.ts';
import { workSchema } from './work.ts';

const ofBoards = ({ boardIds }: { boardIds: number[] }) =>
  ['stacks', 'places', 'dates', ...boardTopics(boardIds)] as const;

/** How boards leave the yard and come back. */
export const lifeRequests = {
  /** They leave all lists, counts and walks. Everything that is known of them stays. */
  'boards.archive': command({
    input: z.object({
      boardIds: someBoards,
      why: leavingSchema,
      note: leavingNoteSchema.default(''),
      /** When they left. */
      at: instantSchema,
      /** Whether that may be before the last reading of one; else it is refused as a question. */
      isBeforeReading: z.boolean().default(false),
      work: workSchema,
    }),
    output: z.object({
      archived: z.number().int(),
      /** How many were reserved for a project, and are no more. */
      released: z.number().int(),
    }),
    topics: ofBoards,
  }),
  /** Boards entered by mistake; refused where one has readings or weights. */
  'boards.delete': command({
    input: z.object({ boardIds: someBoards, work: workSchema }),
    output: z.object({ deleted: z.number().int() }),
    topics: ofBoards,
  }),
  /** Archived boards are in the lists again. */
  'boards.bringBack': command({
    input: z.object({
      boards: z
        .array(
          z.object({
            id: rowIdSchema,
            /** Another ID, where its own is another board's by now. */
            code: boardCodeSchema.nullable().default(null),
          }),
        )
        .min(1)
        .max(100_000),
      work: workSchema,
    }),
    output: z.object({ broughtBack: z.number().int() }),
    topics: ({ boards }) => ['stacks', 'places', ...boardTopics(boards.map(({ id }) => id))],
  }),
};
