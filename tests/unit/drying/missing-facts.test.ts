import { expect, test } from 'vitest';
import { type KnownOfBoard, missingFacts } from '../../../shared-core/wood/drying/missing-facts.ts';
import { inEnglish } from '../words/in-english.ts';

const known: KnownOfBoard = {
  sawnOn: '2026-03-01',
  log: 'Creek walnut',
  widthMm: 200,
  lengthMm: 2400,
  sawing: 'flat',
  barkSide: 'up',
  layer: 2,
};
const codes = (board: KnownOfBoard, place: string | null = null) =>
  missingFacts(board, place).map(({ code }) => code);

test('nothing is missing of a board of which all is known', () => {
  expect(missingFacts(known, null)).toEqual([]);
});

test('a newcomer’s board lacks most, the sawing date first', () => {
  const fresh: KnownOfBoard = {
    sawnOn: null,
    log: '',
    widthMm: null,
    lengthMm: null,
    sawing: 'unknown',
    barkSide: 'unknown',
    layer: null,
  };
  expect(codes(fresh, 'Outdoors')).toEqual([
    'missing.sawn-on',
    'missing.station',
    'missing.log',
    'missing.length',
    'missing.end',
    'missing.bark-side',
    'missing.layer',
  ]);
});

test.each([
  ['missing.sawn-on', { sawnOn: null }],
  ['missing.log', { log: '' }],
  ['missing.length', { lengthMm: null }],
  ['missing.end', { widthMm: null, sawing: 'unknown' }],
  ['missing.bark-side', { barkSide: 'unknown' }],
  ['missing.layer', { layer: null }],
] as const)('%s is said of a board with %j', (code, changed) => {
  expect(codes({ ...known, ...changed })).toEqual([code]);
});

test.each([
  ['Width', { widthMm: null }],
  ['Sawing', { sawing: 'unknown' }],
  ['Width and sawing', { widthMm: null, sawing: 'unknown' }],
] as const)('%s is all that is asked for of the end of a board with %j', (words, changed) => {
  expect(missingFacts({ ...known, ...changed }, null).map(inEnglish)).toEqual([
    `${words}: cup is then forecast.`,
  ]);
});
