import { z } from 'zod';

/** Courses from the bottom, columns from the left, both counted from 1. */
export const courseSchema = z.number().int().min(1).max(500);
export const columnSchema = z.number().int().min(1).max(100);

/** How boards are laid one after the other: from a first place to the right, then on in the course above. */
export const pileOrderSchema = z.object({
  perCourse: columnSchema,
  firstCourse: courseSchema,
  /** Not beyond `perCourse`. */
  firstColumn: columnSchema,
});
export type PileOrder = z.infer<typeof pileOrderSchema>;

/**
 * Where the nth board lies, counted from 0.
 *
 * @example placeInPile({ perCourse: 3, firstCourse: 1, firstColumn: 3 }, 1) // { course: 2, column: 1 }
 */
export function placeInPile({ perCourse, firstCourse, firstColumn }: PileOrder, index: number) {
  const along = firstColumn - 1 + index;
  return { course: firstCourse + Math.floor(along / perCourse), column: (along % perCourse) + 1 };
}

/** Why so many boards cannot be laid so, as a sentence; null where they can. */
export function whyNotLaid(order: PileOrder, boards: number): string | null {
  if (order.firstColumn > order.perCourse) {
    return `The first column, ${order.firstColumn}, lies beyond the ${order.perCourse} boards of a course.`;
  }
  const top = placeInPile(order, boards - 1).course;
  return courseSchema.safeParse(top).success
    ? null
    : `The top course would be number ${top}; a pile has 500 at most. Put more boards in a course.`;
}
