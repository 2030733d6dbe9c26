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

/** What became of a board that left, unless it was merged into another. */
export const becameSchema = z.enum([...leavingSchema.options, 'cut']);
export type Became = z.infer<typeof becameSchema>;

/** Null of a board that was merged or entered by mistake. */
export function becameOf(code: string): Became | null {
  if (cutSchema.safeParse(code).success) return 'cut';
  return leavingSchema.safeParse(code).data ?? null;
}

/** Which of the boards that left; null is any. The year is a local one. */
export const leftFilterSchema = z.object({
  became: becameSchema.nullable(),
  year: z.number().int().min(1900).max(9999).nullable(),
  /** Of those that were sold: to whom, blank where that is not known. */
  soldTo: leavingNoteSchema.nullable().default(null),
});
export type LeftFilter = z.infer<typeof leftFilterSchema>;

/** A list of them, as it is narrowed. */
export const leftListSchema = z.object({
  stackId: z.number().int().positive().nullable(),
  search: z.string().max(80),
  left: leftFilterSchema,
});
export type LeftList = z.infer<typeof leftListSchema>;

/** Totals of the boards that left in the same way in one year, sold ones to one buyer. */
export const leftTotalSchema = z.object({
  became: becameSchema,
  year: z.number().int(),
  /** Of those that were sold: to whom, blank where that is not known; else null. */
  soldTo: leavingNoteSchema.nullable(),
  boards: z.number().int(),
  /** Boards with all three sizes: only these are in the board feet. */
  measured: z.number().int(),
  boardFeet: z.number(),
});
export type LeftTotal = z.infer<typeof leftTotalSchema>;

/** Why a board is in no list of the yard, and since when. */
export const archivedSchema = archivedWhySchema.extend({
  at: instantSchema,
  /** The ID of the board that it was merged into. */
  into: z.string().optional(),
});
export type Archived = z.infer<typeof archivedSchema>;
