import { describe, expect, test } from 'vitest';
import { cautionsOfMove, cautionsOfReady } from '../../../shared-core/probing/calls/cautions.ts';
import { builtInEndUses } from '../../../shared-core/wood/species/built-in.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';

const codes = (...given: Parameters<typeof cautionsOfMove>) =>
  cautionsOfMove(...given).map(({ code }) => code);

const unknown = { averagePct: 0, corePct: 0 };

describe('Before a move', () => {
  // Below 20 to 25 %: O. W. Torgeson, FPL Report 1684 (1956). An 8/4 oak board at 28 % in its core.
  test('into a heated room, a board that may check there is named with the usual step', () => {
    const wet = { averagePct: 22, corePct: 28 };
    expect(cautionsOfMove('shop', 'heated-room', wet).map((each) => inEnglish(each))).toEqual([
      'Too wet for a heated room: it can check and honeycomb. First dry it under cover to 20%, and its core to 25%. Slow species and thick boards need this most.',
    ]);
    expect(codes('shop', 'heated-room', { averagePct: 18, corePct: 28 })).toEqual(['caution.checks']);
    expect(codes('shop', 'heated-room', { averagePct: 15, corePct: 17 })).toEqual([]);
    expect(codes('outdoors', 'open-shed', wet)).toEqual([]);
    expect(codes('shop', 'heated-room', unknown)).toEqual([]);
  });

  // Air-drying reaches no 56 °C, which ISPM 15 asks for: from memory.
  test('indoors, wood that was outdoors may bring insects', () => {
    expect(codes('open-shed', 'shop', unknown)).toEqual(['caution.insects']);
    expect(codes('outdoors', 'heated-room', unknown)).toEqual(['caution.insects']);
    expect(codes('shop', 'heated-room', unknown)).toEqual([]);
    expect(codes('outdoors', 'open-shed', unknown)).toEqual([]);
  });
});

test('beside Ready: framing is no question of moisture alone, and firewood has its own cautions', () => {
  // Common practice, no source.
  const cautioned = builtInEndUses.filter(({ cautions }) => cautionsOfReady(cautions).length > 0);
  expect(cautioned.map(({ id }) => id).toSorted()).toEqual(['firewood', 'framing']);
  expectWhole(cautioned.flatMap(({ cautions }) => cautionsOfReady(cautions)));
});
