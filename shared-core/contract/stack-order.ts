import { z } from 'zod';

/** Courses from the bottom, columns from the left, both counted from 1. */
export const layerSchema = z.number().int().min(1).max(500);
export const columnSchema = z.number().int().min(1).max(100);

/** How boards are laid one after the other: from a first place to the right, then on in the course above. */
export const stackOrderSchema = z.object({
  perLayer: columnSchema,
  firstLayer: layerSchema,
  /** Not beyond `perCourse`. */
  firstColumn: columnSchema,
});
export type StackOrder = z.infer<typeof stackOrderSchema>;

/**
 * Where the nth board lies, counted from 0.
 *
 * @example placeInPile({ perCourse: 3, firstCourse: 1, firstColumn: 3 }, 1) // { course: 2, column: 1 }
 */
export function positionInStack({ perLayer, firstLayer, firstColumn }: StackOrder, index: number) {
  const along = firstColumn - 1 + index;
  return { layer: firstLayer + Math.floor(along / perLayer), column: (along % perLayer) + 1 };
}

/** Why so many boards cannot be laid so, as a sentence; null where they can. */
export function whyNotLaid(order: StackOrder, boards: number): string | null {
  if (order.firstColumn > order.perLayer) {
    return `The first column, ${order.firstColumn}, lies beyond the ${order.perLayer} boards of a course.`;
  }
  const top = positionInStack(order, boards - 1).layer;
  return layerSchema.safeParse(top).success
    ? null
    : `The top course would be number ${top}; a pile has 500 at most. Put more boards in a course.`;
}
