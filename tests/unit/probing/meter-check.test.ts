/** Whether a meter is right, by a test block or a resistor between its pins. */
import { describe, expect, test } from 'vitest';
import {
  allowedOff,
  checkState,
  offBy,
  offShown,
  rightRange,
  rightValue,
  withoutOff,
} from '../../../shared-core/probing/readings/meter-check.ts';
import type { MeterScale } from '../../../shared-core/wood/moisture/corrected.ts';

const usual: MeterScale = { kind: 'usual' };
const at80F: MeterScale = { kind: 'species', speciesId: null, curveId: 'douglas-fir-coast', tempC: 26.7 };

describe('what a meter shows if it is right', () => {
  test('is what the block says, in its own unit', () => {
    expect(rightValue({ expected: 12, unit: 'pct' }, { unit: 'pct', scale: { kind: 'unknown' } })).toBe(12);
    expect(rightValue({ expected: 1e6, unit: 'ohm' }, { unit: 'ohm', scale: { kind: 'ohms' } })).toBe(1e6);
  });

  test('with a resistor between its pins is the % that the curve of its scale has there', () => {
    // 120 megohm is Douglas-fir of 12 % at 80 °F (James 1988, Table 1, from memory).
    const resistor = { expected: 120e6, unit: 'ohm' } as const;
    expect(rightValue(resistor, { unit: 'pct', scale: at80F })).toBeCloseTo(12, 6);
    // A scale right in cooler wood shows more for it: the same ohms are wetter there.
    expect(rightValue(resistor, { unit: 'pct', scale: usual })).toBeGreaterThan(12.2);
    expect(rightValue(resistor, { unit: 'pct', scale: usual })).toBeLessThan(13);
  });

  test.each([
    ['of a % in ohms', { expected: 12, unit: 'pct' }, { unit: 'ohm', scale: { kind: 'ohms' } }],
    ['on an unknown scale', { expected: 1e8, unit: 'ohm' }, { unit: 'pct', scale: { kind: 'unknown' } }],
    [
      'on a scale without a curve',
      { expected: 1e8, unit: 'ohm' },
      { unit: 'pct', scale: { ...at80F, curveId: null } },
    ],
    [
      'on a curve that is not known',
      { expected: 1e8, unit: 'ohm' },
      { unit: 'pct', scale: { ...at80F, curveId: 'none' } },
    ],
    ['beyond the end of the curve', { expected: 1e4, unit: 'ohm' }, { unit: 'pct', scale: at80F }],
  ] as const)('is not known %s', (_, check, meter) => {
    expect(rightValue(check, meter)).toBeNull();
  });
});

describe('how far off a meter is', () => {
  test('is in points of a %, in decades of ohms', () => {
    expect(offBy('pct', { right: 12, shown: 12.6 })).toBeCloseTo(0.6, 10);
    expect(offBy('ohm', { right: 1e6, shown: 1e7 })).toBeCloseTo(1, 10);
    expect(offBy('ohm', { right: 1e-300, shown: 1e300 })).toBeCloseTo(600, 6);
  });

  test('is shown as points, or as a share of the ohms', () => {
    expect(offShown('pct', 0.6)).toBe(0.6);
    expect(offShown('ohm', 1)).toBeCloseTo(9, 10);
    expect(offShown('ohm', Math.log10(0.9))).toBeCloseTo(-0.1, 10);
  });

  test('is subtracted from a shown value', () => {
    expect(withoutOff('pct', 12.6, 0.6)).toBeCloseTo(12, 10);
    expect(withoutOff('ohm', 1e7, 1)).toBeCloseTo(1e6, 4);
  });

  test('is still right within the tolerance, points or a share of the ohms', () => {
    expect(allowedOff('pct', 0.5)).toBe(0.5);
    expect(allowedOff('ohm', 0.01)).toBeCloseTo(Math.log10(1.01), 12);
    expect(rightRange('pct', 12, 0.5)).toEqual({ from: 11.5, to: 12.5 });
    const { from, to } = rightRange('ohm', 1e6, 0.01);
    expect(to).toBeCloseTo(1.01e6, 4);
    expect(from).toBeCloseTo(1e6 / 1.01, 4);
  });
});

// 3 points, or a decade: common practice, no source.
describe('a check says that the meter is', () => {
  const of = (shown: number, by = 0) => checkState('pct', { right: 12.1, shown, tolerance: 0.5 }, by);

  test('right within the tolerance, to the last digit', () => {
    expect([11.6, 12.1, 12.6].map((shown) => of(shown))).toEqual(['right', 'right', 'right']);
    expect([11.5, 12.7].map((shown) => of(shown))).toEqual(['off', 'off']);
  });

  test('right where its values are corrected by that already', () => {
    expect([of(13.1, 1), of(13.1), of(11.1, 1)]).toEqual(['right', 'off', 'off']);
  });

  test('too far off to be corrected beyond three points, whatever it is corrected by', () => {
    expect([of(15.1), of(15.2), of(9), of(8.9)]).toEqual(['off', 'too-far', 'too-far', 'too-far']);
    expect(of(15.2, 1)).toBe('too-far');
  });

  test('too far off beyond a decade of ohms', () => {
    const ohms = (shown: number) => checkState('ohm', { right: 1e6, shown, tolerance: 0.05 }, 0);
    expect([1.04e6, 1.06e6, 9.9e6, 1.1e7].map(ohms)).toEqual(['right', 'off', 'off', 'too-far']);
  });
});
