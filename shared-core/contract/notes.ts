import { z } from 'zod';
import { rowIdSchema } from './yard.ts';

/** What a note can be on, and a picture of. */
export const subjectSchema = z.object({
  kind: z.enum(['board', 'stack', 'round', 'reading']),
  id: rowIdSchema,
});
export type Subject = z.infer<typeof subjectSchema>;

/** Where a subject is shown. */
export const subjectPlaceSchema = z.object({
  boardId: rowIdSchema.nullable(),
  stackId: rowIdSchema,
  roundId: rowIdSchema.nullable(),
});
export type SubjectPlace = z.infer<typeof subjectPlaceSchema>;
