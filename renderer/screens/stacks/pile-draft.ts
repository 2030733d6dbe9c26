import {
  type PileOrder,
  pileOrderSchema,
  placeInPile,
  whyNotLaid,
} from '../../../shared-core/contract/pile.ts';

/** How boards are laid in courses, as it stands in the fields. */
export interface PileDraft {
  perCourse: number | null;
  firstCourse: number | null;
  firstColumn: number | null;
}

export const emptyPileDraft: PileDraft = { perCourse: null, firstCourse: null, firstColumn: null };

/**
 * How the boards are laid; null where nobody said.
 *
 * @param firstCourse  the course to begin in where none is typed
 * @returns            or what is wrong, as a sentence
 */
export function pileOrderOf(
  draft: PileDraft,
  boards: number,
  firstCourse: number,
): { pile: PileOrder | null } | { problem: string } {
  if (draft.perCourse === null) {
    return draft.firstCourse === null && draft.firstColumn === null
      ? { pile: null }
      : { problem: 'Say how many boards lie in a course, or leave all three empty.' };
  }
  const pile = {
    perCourse: draft.perCourse,
    firstCourse: draft.firstCourse ?? firstCourse,
    firstColumn: draft.firstColumn ?? 1,
  };
  if (!pileOrderSchema.safeParse(pile).success) {
    return { problem: 'Whole numbers: up to 100 boards in a course, courses up to 500.' };
  }
  const problem = whyNotLaid(pile, boards);
  return problem === null ? { pile } : { problem };
}

/** Where the boards come to lie, in words. */
export function pileWords(pile: PileOrder, boards: number): string {
  const top = placeInPile(pile, boards - 1).course;
  return top === pile.firstCourse
    ? `All in course ${top}.`
    : `Courses ${pile.firstCourse} to ${top}, from the bottom up.`;
}
