/** Boards of which a reading is above the scale of its meter: the value is only known to be higher. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findingOf } from '../../../electron/app/judging/finding.ts';
import { isAnyAboveScale } from '../../../shared-core/probing/calls/above-scale.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import { PAIRS } from '../../../shared-core/probing/readings/plan-basis.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { evidence, interior, reading, readings } from './a-board.ts';

const board = { thicknessMm: 27, lengthMm: 3000 };
/** The last of the readings is above the scale. */
const lastAbove = (all: Reading[]): Reading[] =>
  all.map((each, index) => (index === all.length - 1 ? { ...each, isAbove: true } : each));
function judged(shell: number[], core: number[]) {
  const assessment = judgeBoard(evidence(lastAbove(readings(shell, core)), { board }));
  return { assessment, finding: findingOf(1, { ...board, planBasis: PAIRS }, assessment)! };
}

test('a board that is too wet by the ends of the scale is over their average, how far nobody knows', () => {
  const { assessment, finding } = judged([20, 20.4], [28, 28]);
  expect(assessment.call).toBe('keep-drying');
  expect(inEnglish(assessment.reasons[0])).toMatch(/^Too wet: over 2\d(\.\d)?%\. Target 6–10%\.$/);
  expect(finding).toMatchObject({ averageIs: 'above', lowPct: null, highPct: null });
});

test('a board that is within the target by the end of a scale is to be probed again', () => {
  const { assessment } = judged([7.8, 8], [8.2, 8.4]);
  expect(assessment.call).toBe('probe-again');
  expect(assessment.reasons.map(inEnglish)).toEqual([
    'The meter showed only that it is above 8.4%. The true value is higher.',
    'An oven-dry check gives the MC.',
  ]);
});

test('a board that would probably be too wet is too wet where a reading is above the scale', () => {
  const { assessment } = judged([10.6, 10.6], [10.7, 10.7]);
  expect(assessment.call).toBe('keep-drying');
  expect(assessment.reasons.map(inEnglish)).toEqual(['Too wet: over 10.6%. Target 6–10%.']);
});

test('close to the limit of a strict use, a board is to be probed again only for a reading above the scale', () => {
  const strict = { ...interior, minPct: 6, maxPct: 8, tolerancePoints: 0.3 };
  const place = { name: 'the shop', kind: 'shop', emcPct: 6, month: 5 } as const;
  const of = (all: Reading[]) => judgeBoard(evidence(all, { board, endUse: strict, place })).reasons[0].code;
  const nearLimit = readings([7.8, 7.8], [7.9, 7.9]);
  expect(of(nearLimit)).toBe('call.may-be-too-wet');
  expect(of(lastAbove(nearLimit))).not.toBe('call.may-be-too-wet');
});

test('too few readings, one above the scale: it says so, and gives no range for the average', () => {
  const nearEnd = (id: number, depth: 'shell' | 'core') =>
    reading(id, depth, 8, { spot: { depth, depthMm: null, fromEndMm: 100, face: 'face' } });
  const few = [nearEnd(8, 'shell'), nearEnd(9, 'core'), ...readings([8], [8.2])];
  const codes = (of: Reading[]) => judgeBoard(evidence(of, { board })).reasons.map(({ code }) => code);
  expect(codes(few)).toContain('call.likely');
  expect(codes(lastAbove(few))[0]).toBe('call.too-few');
  expect(codes(lastAbove(few))).not.toContain('call.likely');
});

test('a reading beyond a scale in ohms says that the wood is drier, not wetter', () => {
  const { assessment } = judged([20, 20.4], [28, 28]);
  expect(isAnyAboveScale(assessment.readings)).toBe(true);
  expect(isAnyAboveScale(assessment.readings.map((each) => ({ ...each, unit: 'ohm' })))).toBe(false);
});

test('no such board is ready or too dry, and its average is stated only as what it is over', () => {
  const pct = fc.double({ min: 4, max: 40, noNaN: true });
  fc.assert(
    fc.property(fc.array(pct, { minLength: 4, maxLength: 4 }), ([a = 0, b = 0, c = 0, d = 0]) => {
      const { assessment, finding } = judged([a, b], [c, d]);
      const [last] = assessment.readings.slice(-1);
      fc.pre(last!.counts && last!.suspicions.every(({ severity }) => severity === 'note'));
      expect(['ready', 'too-dry']).not.toContain(assessment.call);
      expect(finding.averageIs).toBe('above');
      expectWhole(assessment.reasons);
      for (const reason of assessment.reasons)
        if (reason.facts && 'averagePct' in reason.facts) expect(reason.code).toBe('call.above-scale');
    }),
  );
});
