/** What a stack is due for through its boards that were moved elsewhere one by one. */
import { z } from 'zod';
import { message } from '../../words/message.ts';
import type { DueKind } from '../calls/next-step.ts';
import { boardsForNoneWet } from './sample-size.ts';
import { CERTAINTY, ONE_IN, type StackDue } from './stack-call.ts';

/** Boards of a stack that are at another place than it. */
export const placeElsewhereSchema = z.object({
  placeId: z.number().int().positive(),
  placeName: z.string(),
  boards: z.number().int().positive(),
  /** How many of them are due for a probe. */
  toProbe: z.number().int().nonnegative(),
});
export type PlaceElsewhere = z.infer<typeof placeElsewhereSchema>;

const probesOfCalled: readonly DueKind[] = [
  'should-be-ready',
  'probe-again',
  'may-not-be-ready',
  'could-change-call',
  'learns-rate',
];

/**
 * How many boards of one place are due for a probe: those that have a call and are due for another; where none has a call,
 * as many as a stack's first round reads.
 *
 * @param groups  boards alike in whether they have a call, and in what they are due for
 */
export function toProbeThere(
  groups: readonly { boards: number; isCalled: boolean; due: DueKind | null }[],
): number {
  const count = (some: typeof groups) => some.reduce((sum, { boards }) => sum + boards, 0);
  return groups.some(({ isCalled }) => isCalled)
    ? count(groups.filter(({ isCalled, due }) => isCalled && due !== null && probesOfCalled.includes(due)))
    : boardsForNoneWet(count(groups), 1 / ONE_IN, CERTAINTY);
}

/** What a stack is due for where it is, and after that the boards to probe at other places. */
export function withElsewhere(due: StackDue | null, places: readonly PlaceElsewhere[]): StackDue | null {
  const there = places.filter(({ toProbe }) => toProbe > 0);
  const [first] = there;
  if (first === undefined) return due;
  const sentences = there.map(({ placeName, toProbe }) =>
    message('stack-call.probe-elsewhere', { boards: toProbe, placeName }),
  );
  const whySentences = due === null ? sentences : [due.why, ...sentences];
  const why = message('stack-call.and-elsewhere', { whySentences });
  return due === null ? { kind: 'probe-again', why, placeId: first.placeId } : { ...due, why };
}
