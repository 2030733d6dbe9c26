import { expect, test } from 'vitest';
import { publishedCorrection } from '../../../shared-core/wood/moisture/published-correction.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';

const linear = { a: 0.9, b: 0.6 };

test('a species is corrected by its coefficients, else by its curve, which is named', () => {
  expect(publishedCorrection({ curveId: 'walnut-black', linear })).toEqual(
    message('species.correction.linear'),
  );
  const byCurve = publishedCorrection({ curveId: 'walnut-black', linear: null });
  expect(byCurve.code).toBe('species.correction.curve');
  expect(inEnglish(byCurve)).toMatch(/walnut/i);
});

test('a species without either is not corrected, and it says so', () => {
  expect(publishedCorrection({ curveId: null, linear: null })).toEqual(message('species.correction.none'));
  expect(publishedCorrection({ curveId: 'no-such', linear: null })).toEqual(
    message('species.correction.none'),
  );
});
