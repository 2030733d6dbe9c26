import {
  positionInStack,
  type StackOrder,
  stackOrderSchema,
  whyNotLaid,
} from '../../../shared-core/contract/stack-order.ts';

/** How boards are laid in courses, as it stands in the fields. */
export interface StackOrderDraft {
  perLayer: number | null;
  firstLayer: number | null;
  firstColumn: number | null;
}

export const emptyStackOrderDraft: StackOrderDraft = { perLayer: null, firstLayer: null, firstColumn: null };

/**
 * How the boards are laid; null where nobody said.
 *
 * @param firstCourse  the course to begin in where none is typed
 * @returns            or what is wrong, as a sentence
 */
export function stackOrderOf(
  draft: StackOrderDraft,
  boards: number,
  firstLayer: number,
): { stackOrder: StackOrder | null } | { problem: string } {
  if (draft.perLayer === null) {
    return draft.firstLayer === null && draft.firstColumn === null
      ? { stackOrder: null }
      : { problem: 'Say how many boards lie in a course, or leave all three empty.' };
  }
  const stackOrder = {
    perLayer: draft.perLayer,
    firstLayer: draft.firstLayer ?? firstLayer,
    firstColumn: draft.firstColumn ?? 1,
  };
  if (!stackOrderSchema.safeParse(stackOrder).success) {
    return { problem: 'Whole numbers: up to 100 boards in a course, courses up to 500.' };
  }
  const problem = whyNotLaid(stackOrder, boards);
  return problem === null ? { stackOrder } : { problem };
}

/** Where the boards come to lie, in words. */
export function stackOrderWords(stackOrder: StackOrder, boards: number): string {
  const top = positionInStack(stackOrder, boards - 1).layer;
  return top === stackOrder.firstLayer
    ? `All in course ${top}.`
    : `Courses ${stackOrder.firstLayer} to ${top}, from the bottom up.`;
}
