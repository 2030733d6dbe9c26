import { describe, expect, test } from 'vitest';
import { callHere, type Found, type Here } from '../../../shared-core/probing/calls/call-here.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';
import { found, place } from './a-judged-board.ts';

const target = { minPct: 6, maxPct: 8 };
const here = (emcPct: number | null, more: Partial<Here> = {}): Here => ({
  placeName: 'Pole shed',
  lowestEmc: place(1, 'Pole shed', 'open-shed', emcPct).lowestEmc,
  target,
  averagePct: 14.9,
  corePct: 16,
  getsThere: null,
  ...more,
});
const told = (read: Found, where: Here) => {
  const { call, reasons } = callHere(read, where);
  return [call, ...reasons.map((each) => inEnglish(each))];
};
const tooWet = found('keep-drying', 14.9);
const dryEnough = 'Dry enough to bring in: average at most 20%, core at most 25%.';
const saysTooWet = 'Too wet: 14.9%. Target 6–8%.';

describe('A board that is too wet', () => {
  test('dries on where the lowest EMC of the year lies in its target', () => {
    expect(told(tooWet, here(8))).toEqual([
      'keep-drying',
      saysTooWet,
      'Pole shed may dry it to the target: lowest EMC 8.0%, in May.',
    ]);
  });

  test('only may dry to the target in any place before a forecast says so', () => {
    expect(told(tooWet, here(5.5))[2]).toBe('Pole shed may dry it to the target: lowest EMC 5.5%, in May.');
  });

  test('is to be brought in where it lies above that', () => {
    expect(told(tooWet, here(8.1))).toEqual([
      'bring-in',
      saysTooWet,
      'Pole shed is unlikely to dry it to the target: lowest EMC 8.1%, in May.',
      dryEnough,
    ]);
  });

  test('goes by its forecast where there is one', () => {
    expect(told(tooWet, here(7, { getsThere: true }))).toEqual(['keep-drying', saysTooWet]);
    expect(told(tooWet, here(7, { getsThere: false }))).toEqual([
      'bring-in',
      saysTooWet,
      'In Pole shed it is unlikely to reach 6–8% within two years.',
      dryEnough,
    ]);
  });

  // Above 20 %: common practice, no source. Core above 25 %: Torgeson, FPL Report 1684 (1956).
  test.each([
    [20.5, 22],
    [18, 26],
  ])(
    'at %d%%, its core at %d%%, is too wet for a room: it dries on first, and why it cannot stay is said',
    (averagePct, corePct) => {
      const [call, ...reasons] = told(found('keep-drying', averagePct), here(12, { averagePct, corePct }));
      expect(call).toBe('keep-drying');
      expect(reasons[1]).toBe('Pole shed is unlikely to dry it to the target: lowest EMC 12.0%, in May.');
      expect(reasons[2]).toBe('Too wet to bring in: let it dry to 20% first, and its core to 25%.');
    },
  );

  // Common practice, no source: the core of a thick board is the wettest, and checks in a heated room.
  test('of which only the shell was read dries on until its core is probed, or a forecast tells of it', () => {
    const shellAlone: Found = { ...found('keep-drying', 15.6), averageIs: 'unknown' };
    expect(told(shellAlone, here(12, { averagePct: 15.6, corePct: null }))).toEqual([
      'keep-drying',
      'Too wet: 15.6%. Target 6–8%.',
      'Pole shed is unlikely to dry it to the target: lowest EMC 12.0%, in May.',
      'Probe its core before you bring it in: it may be wetter than 25%.',
    ]);
    expect(told(shellAlone, here(12, { averagePct: 17, corePct: 19 }))[0]).toBe('bring-in');
  });

  test('with the air not known: it says so', () => {
    expect(callHere(tooWet, here(null)).reasons[1]).toEqual(
      message('call.air-unknown', { placeName: 'Pole shed' }),
    );
  });

  test('in the average air of a region: that is said once to be rough', () => {
    const rough = { ...here(12).lowestEmc!, isRough: true };
    expect(callHere(tooWet, { ...here(12), lowestEmc: rough }).reasons.at(-1)).toEqual(
      message('call.rough-air', { placeName: 'Pole shed' }),
    );
  });

  test('in air that is the same all year: no month is named', () => {
    const { lowestEmc } = here(12);
    expect(told(tooWet, { ...here(12), lowestEmc: { ...lowestEmc!, month: null } })[2]).toBe(
      'Pole shed is unlikely to dry it to the target: EMC 12.0% all year.',
    );
  });
});

test.each([
  ['ready', 7],
  ['too-dry', 5],
  ['probe-again', 14.9],
  ['keep-drying', 7.5],
] as const)('a board called %s at %d%% has that call in any place', (call, averagePct) => {
  const read = found(call, averagePct);
  expect(callHere(read, here(12))).toEqual({ call, reasons: read.reasons });
});
