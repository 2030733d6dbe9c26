import { describe, expect, test } from 'vitest';
import { typedLengthMm } from '../../../shared-core/units/typed-length.ts';

describe('A thickness as a person types it', () => {
  // 1 in = 25.4 mm exactly, by definition (international yard and pound agreement, 1959).
  test.each([
    ['27', 'metric', 27],
    ['27,5', 'metric', 27.5],
    ['27 mm', 'imperial', 27],
    ['2.7cm', 'imperial', 27],
    ['1', 'imperial', 25.4],
    ['1.5', 'imperial', 38.1],
    ['1 in', 'metric', 25.4],
    ['2"', 'metric', 50.8],
    ['1 1/16', 'imperial', 26.9875],
    ['1-1/4 in', 'metric', 31.75],
  ] as const)('%s in %s units is %f mm', (text, units, mm) => {
    expect(typedLengthMm(text, units)).toBeCloseTo(mm, 9);
  });

  // Quarter names count quarters of an inch of rough thickness (common practice, no source).
  test.each([
    ['4/4', 25.4],
    ['5/4', 31.75],
    ['8/4', 50.8],
  ])('the quarter name %s is %f mm, whatever the units', (name, mm) => {
    expect(typedLengthMm(name, 'metric')).toBeCloseTo(mm, 9);
    expect(typedLengthMm(name, 'imperial')).toBeCloseTo(mm, 9);
  });

  test('nothing typed is nothing, not zero', () => {
    expect(typedLengthMm('  ', 'metric')).toBeNull();
  });

  test.each(['thick', '4/0', '1/2/3', '-27', '27 m', '1e3', '4//4'])('%s is not a length', (text) => {
    expect(typedLengthMm(text, 'metric')).toBeNaN();
  });
});
