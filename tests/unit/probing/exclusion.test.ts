/** Why something measured is excluded. */
import { describe, expect, test } from 'vitest';
import {
  type Exclusion,
  exclusionSchema,
  givenExclusionSchema,
  isMoved,
  isMovedAway,
  isSlip,
  readingReasons,
} from '../../../shared-core/probing/readings/exclusion.ts';

const moved: Exclusion = { code: 'moved', to: '8d0e4f5e-5b0c-4f6e-9d0a-0a1b2c3d4e5f' };
const own = ['undone-in-round', 'replaced', 'undone', 'unmoved', 'damaged'] as const;
const weighed = ['wrong-board', 'wrong-piece', 'wet-with-rain'] as const;
const checks = ['knot', 'read-frozen', 'resin-lost', 'not-on-block'] as const;
const all: Exclusion[] = [
  ...[...own, ...readingReasons, ...weighed, ...checks].map((code) => ({ code })),
  moved,
  { text: 'a bark pocket' },
];
const codes = (is: (excluded: Exclusion | null) => boolean) =>
  all.filter(is).map((each) => ('code' in each ? each.code : each.text));

test('every reason is saved as it was given', () => {
  for (const each of all) expect(exclusionSchema.parse(each)).toEqual(each);
  expect(exclusionSchema.safeParse({ code: 'no-such' }).success).toBe(false);
  expect(exclusionSchema.safeParse({ code: 'moved' }).success).toBe(false);
});

test('a reading is another board’s where it was moved there, also where that is not so any more', () => {
  expect(codes(isMoved)).toEqual(['moved']);
  expect(codes(isMovedAway)).toEqual(['unmoved', 'moved']);
});

test('what was undone, replaced or moved is as if it had never been measured', () => {
  expect(codes(isSlip)).toEqual(['undone-in-round', 'replaced', 'undone', 'unmoved', 'moved']);
});

test('what is included is none of these', () => {
  for (const is of [isMoved, isMovedAway, isSlip]) expect(is(null)).toBe(false);
});

describe('a person gives', () => {
  test('a known reason, or up to 200 letters of words, without blanks around them', () => {
    expect(givenExclusionSchema.parse({ code: 'defect' })).toEqual({ code: 'defect' });
    expect(givenExclusionSchema.parse({ text: '  a bark pocket ' })).toEqual({ text: 'a bark pocket' });
    const isTaken = (text: string) => givenExclusionSchema.safeParse({ text }).success;
    expect([' ', 'x', 'x'.repeat(200), 'x'.repeat(201)].map(isTaken)).toEqual([false, true, true, false]);
  });

  test('no move: that is the program’s own', () => {
    expect(givenExclusionSchema.safeParse(moved).success).toBe(false);
  });
});
