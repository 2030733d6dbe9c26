import { z } from 'zod';
import { instantSchema } from '../time.ts';
import { cutSchema } from './archive.ts';
import { boardCodeSchema, boardSchema, rowIdSchema } from './yard.ts';

/** How one record of a board came from another; `unknown` where what the file has cannot be read. */
export const originHowSchema = z.enum([...cutSchema.options, 'merged', 'unknown']).catch('unknown');

/** Another board that a board came from, or that came from it. */
export const originSchema = z.object({
  boardId: rowIdSchema,
  code: boardCodeSchema,
  how: originHowSchema,
  /** When it was cut or merged. */
  at: instantSchema,
});
export type Origin = z.infer<typeof originSchema>;

/** A board whose readings are also those of what it became. */
export const readBeforeSchema = boardSchema.pick({ code: true, lengthMm: true }).extend({
  boardId: rowIdSchema,
  /** Whether it is another record of the same board. */
  isSame: z.boolean(),
});
export type ReadBefore = z.infer<typeof readBeforeSchema>;
