/** What a person writes where a meter is past its scale. Common practice, no source. */
import { describe, expect, test } from 'vitest';
import {
  isBelowScale,
  isMoreThan,
  isWithoutNumber,
  withoutAbove,
} from '../../../shared-core/probing/readings/beyond-scale.ts';

test.each([
  'OL',
  'o.l.',
  'O.L',
  'over',
  'overload',
  'over range',
  'overrange',
  'over-range',
  'out of range',
  'hi',
  'HIGH',
  'lo',
  'low',
  'Err',
  'error',
  'wet',
  'too wet',
  'märkä',
  'nass',
  'molhado',
  'OL!',
  ' wet ',
])('"%s" is no number', (text) => {
  expect(isWithoutNumber(text)).toBe(true);
});

test.each(['12', '', 'OLD', 'so wet', 'wet 12', 'over 30', 'hello', 'slow'])(
  '"%s" is no such word',
  (text) => {
    expect(isWithoutNumber(text)).toBe(false);
  },
);

test.each([
  '<6',
  '< 6',
  '≤6',
  '<=6',
  '≤= 6',
  'under 6',
  'Under6',
  'below 6',
  'less than 6',
  ' <6',
  '6-',
  '6 -',
  '6−',
  '6.5 %-',
  '6,5% −',
  ' 6-',
])('"%s" is below the scale', (text) => {
  expect(isBelowScale(text)).toBe(true);
});

test.each(['6', '6-8', '-6', '<', 'under', 'undersix 6', 'thunder 6', '6- 8', 'a6-', '>6'])(
  '"%s" is not below the scale',
  (text) => {
    expect(isBelowScale(text)).toBe(false);
  },
);

describe('above the scale', () => {
  test.each([
    ['>28', '28'],
    ['> 28', '28'],
    ['≥28', '28'],
    ['>=28', '28'],
    [' >28', '28'],
    ['over 30', '30'],
    ['Over30', '30'],
    ['above 30', '30'],
    ['more than 30', '30'],
    ['30+', '30'],
    ['30 +', '30 '],
    ['30.5 %+', '30.5 %'],
    ['30,5%  +', '30,5%'],
    ['30+ core', '30 core'],
  ])('"%s" is more than "%s"', (text, plain) => {
    expect(withoutAbove(text)).toEqual({ text: plain, isAbove: true });
  });

  test.each(['28', '14 + 2', '14+2', '>', '+', 'over', 'more than', 'over the moon 30', 'core 30+', '<6'])(
    '"%s" is as it is written',
    (text) => {
      expect(withoutAbove(text)).toEqual({ text, isAbove: false });
    },
  );

  test('a corrected value is more than itself only where the person said so', () => {
    expect(isMoreThan(28, 28, true)).toBe(true);
    expect(isMoreThan(26, 28, true)).toBe(false);
    expect(isMoreThan(28, 28, false)).toBe(false);
    expect(isMoreThan(26, 28, 26)).toBe(true);
    expect(isMoreThan(26, 28, 28)).toBe(false);
  });
});
