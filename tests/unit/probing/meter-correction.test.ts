/** What a meter's values are corrected by, as its checks say. */
import { expect, test } from 'vitest';
import { correctionAt, correctionSteps } from '../../../shared-core/probing/readings/meter-correction.ts';

const day = (of: number) => `2026-05-0${of}T10:00:00.000Z`;
const check = (at: number, off: number, correctedOn: number | null = null) => ({
  at: day(at),
  off,
  correctedAt: correctedOn === null ? null : day(correctedOn),
});
const after = (...checks: ReturnType<typeof check>[]) => correctionSteps(checks).map(({ off }) => off);

test('nothing is corrected until a person asks for it', () => {
  expect(after(check(1, 0.8), check(3, 0.9))).toEqual([0, 0]);
});

test('a correction lasts through later checks that a person did not correct by', () => {
  expect(after(check(1, 0.8, 1), check(3, 0.9), check(5, 0.7))).toEqual([0.8, 0.8, 0.8]);
});

test('a newer correction takes its place', () => {
  expect(after(check(1, 0.8, 1), check(3, 0.2, 3), check(5, 0.7))).toEqual([0.8, 0.2, 0.2]);
});

test('one made after the next check applies only to readings before that check', () => {
  expect(after(check(1, 0.8, 4), check(3, 0.1), check(5, 0.7))).toEqual([0.8, 0, 0]);
  expect(after(check(1, 0.8, 3), check(3, 0.1))).toEqual([0.8, 0.8]);
});

test('a value is corrected by the newest check before it, and before the first by nothing', () => {
  const steps = correctionSteps([check(2, 0.8, 2), check(4, 0.2, 4)]);
  expect(steps.map(({ at }) => at)).toEqual([day(2), day(4)]);
  expect([1, 2, 3, 4, 5].map((of) => correctionAt(steps, day(of)))).toEqual([0, 0.8, 0.8, 0.2, 0.2]);
});
