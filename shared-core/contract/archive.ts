import { z } from 'zod';
import { instantSchema } from '../time.ts';

/** How a board was cut into others: along the grain, or across it. */
export const cutSchema = z.enum(['ripped', 'crosscut']);
export type Cut = z.infer<typeof cutSchema>;

/** Why a person took a board out of the yard. */
export const leavingSchema = z.enum(['sold', 'used', 'scrapped']);
export type Leaving = z.infer<typeof leavingSchema>;

/** To whom, or what for. */
export const leavingNoteSchema = z.string().trim().max(200);

/**
 * Why a board is archived, as the file has it. `merged`: it is another record of a board, which has its readings now.
 * `deleted` and `undone`: it is in no list. `unknown`: what the file has cannot be read.
 */
export const archivedWhySchema = z.object({
  code: z
    .enum([...leavingSchema.options, ...cutSchema.options, 'merged', 'deleted', 'undone', 'unknown'])
    .catch('unknown'),
  note: leavingNoteSchema.default('').catch(''),
});
export type ArchivedWhy = z.infer<typeof archivedWhySchema>;

/** Why a board is in no list of the yard, and since when. */
export const archivedSchema = archivedWhySchema.extend({
  at: instantSchema,
  /** The ID of the board that it was merged into. */
  into: z.string().optional(),
});
export type Archived = z.infer<typeof archivedSchema>;
