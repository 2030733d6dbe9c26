import { describe, expect, test } from 'vitest';
import { shrunkPct } from '../../../shared-core/wood/movement/shrinkage.ts';
import {
  faceCupMm,
  type WarpAdvice,
  type WarpInput,
  warpOf,
  warpSchema,
} from '../../../shared-core/wood/movement/warp.ts';
import { message } from '../../../shared-core/words/message.ts';
import { codesOf, expectWhole, inEnglish } from '../words/in-english.ts';

/** Northern red oak, Wood Handbook, Table 4-3. */
const oak = { radialPct: 4, tangentialPct: 8.6 };

const even = (mc: number): number[] => Array.from({ length: 21 }, () => mc);
const straight = (a: number, b: number): number[] =>
  Array.from({ length: 21 }, (_, i) => a + ((b - a) * i) / 20);
/** Faces at `shell`, middle at `core`, a parabola between. */
const drying = (shell: number, core: number): number[] =>
  Array.from({ length: 21 }, (_, i) => shell + (core - shell) * 4 * (i / 20) * (1 - i / 20));

/** As pins read a profile that is the same from both sides, or runs straight: a sixteenth of the way in, and in the middle. */
const pinsIn = (profilePct: readonly number[]): WarpInput['atPins'] => {
  const [faceAPct, faceBPct, corePct] = [profilePct[1]!, profilePct.at(-2)!, profilePct[10]!];
  return { faceAPct, faceBPct, shellPct: Math.min(faceAPct, faceBPct), corePct };
};

const board = ({ profilePct = even(20), ...changes }: Partial<WarpInput> = {}): WarpInput => ({
  thicknessMm: 28,
  widthMm: 200,
  sawing: 'flat',
  ringRadiusMm: 120,
  barkFace: 'a',
  isBarkOn: false,
  ...oak,
  profilePct,
  atPins: pinsIn(profilePct),
  targetPct: 8,
  maxShellCorePct: 2,
  ...changes,
});
const advised = (input: WarpInput): string[] => warpOf(input).advice.map((advice) => advice.about);

describe('cup of unlike faces', () => {
  // A free plate with strains that run straight through its thickness bends to curvature (difference / thickness) and
  // is free of stress (Timoshenko and Goodier; from memory). Hollow of an arc: curvature width² / 8.
  test('is that of a plate whose faces shrank by different amounts', () => {
    const difference = (shrunkPct(8.6, 8) - shrunkPct(8.6, 14)) / 100;
    expect(faceCupMm(straight(8, 14), 28, 200, 8.6)).toBeCloseTo((difference / 28) * (200 ** 2 / 8), 9);
  });

  test('is nothing for a board that is the same from both sides', () => {
    expect(faceCupMm(drying(8, 20), 28, 200, 8.6)).toBeCloseTo(0, 12);
  });

  test('makes the drier face hollow', () => {
    expect(faceCupMm(straight(8, 14), 28, 200, 8.6)).toBeGreaterThan(0);
    expect(faceCupMm(straight(14, 8), 28, 200, 8.6)).toBeLessThan(0);
  });

  test('does not come from differences above fiber saturation, where wood does not shrink', () => {
    expect(faceCupMm(straight(40, 90), 28, 200, 8.6)).toBeCloseTo(0, 12);
  });

  test('is refused for a board without size or profile', () => {
    expect(() => faceCupMm([8, 9], 28, 200, 8.6)).toThrow(RangeError);
    expect(() => faceCupMm(even(8), 0, 200, 8.6)).toThrow(RangeError);
  });
});

describe('warp', () => {
  test('is plain data of its schema', () => {
    const warp = warpOf(board());
    expect(warpSchema.parse(JSON.parse(JSON.stringify(warp)))).toEqual(warp);
  });

  test('of a flat-sawn board is hollow on the bark side and grows to the target', () => {
    const { now, atTarget } = warpOf(board());
    expect(now.totalMm).toBeGreaterThan(0);
    expect(atTarget.totalMm).toBeGreaterThan(now.totalMm);
    const turned = warpOf(board({ barkFace: 'b' }));
    expect(turned.atTarget.totalMm).toBeCloseTo(-atTarget.totalMm, 12);
  });

  test('is least for quarter-sawn, most for flat-sawn near the pith', () => {
    const cup = (changes: Partial<WarpInput>): number => Math.abs(warpOf(board(changes)).atTarget.totalMm);
    expect(cup({ sawing: 'quarter' })).toBeLessThan(0.2 * cup({ sawing: 'flat' }));
    expect(cup({ sawing: 'rift' })).toBeLessThan(cup({ sawing: 'flat' }));
    expect(cup({ ringRadiusMm: 80 })).toBeGreaterThan(cup({ ringRadiusMm: 200 }));
  });

  test('of a green board is nothing yet', () => {
    expect(warpOf(board({ profilePct: even(60) })).now.totalMm).toBeCloseTo(0, 9);
  });

  test('with the bark face not known is the worse of the two ways', () => {
    const profilePct = straight(10, 18);
    const either = (['a', 'b'] as const).map((barkFace) =>
      Math.abs(warpOf(board({ profilePct, barkFace })).now.totalMm),
    );
    expect(Math.abs(warpOf(board({ profilePct, barkFace: null })).now.totalMm)).toBeCloseTo(
      Math.max(...either),
      9,
    );
  });
});

describe('advice', () => {
  const adviceOn = (about: WarpAdvice['about'], input: WarpInput) =>
    warpOf(input).advice.find((each) => each.about === about)?.message;

  test('is to turn a board whose faces differ, and names the drier face', () => {
    expect(adviceOn('flip', board({ profilePct: straight(10, 18) }))).toEqual(
      message('cup.flip', { drierFace: 'upper', differencePoints: expect.closeTo(7, 0) }),
    );
    expect(advised(board({ profilePct: even(12) }))).not.toContain('flip');
  });

  // Bark sheds water and keeps it in (common practice, no source).
  test('is to take bark off, and not to turn the board over, where bark keeps that face wet', () => {
    const input = board({ profilePct: straight(18, 10), isBarkOn: true });
    expect(advised(input)).not.toContain('flip');
    expect(adviceOn('bark', input)).toEqual(
      message('cup.bark-and-hollow', { face: 'upper', differencePoints: expect.closeTo(7, 0) }),
    );
    // The other face is the wet one: both.
    const both = board({ profilePct: straight(18, 10), isBarkOn: true, barkFace: 'b' });
    expect(advised(both)).toEqual(expect.arrayContaining(['bark', 'flip']));
    expect(adviceOn('bark', both)).toEqual(message('cup.bark', { face: 'lower' }));
    expect(advised(board())).not.toContain('bark');
  });

  test('names the side that will be hollow only where it is known', () => {
    const weight = (changes: Partial<WarpInput>) =>
      adviceOn('weight', board({ widthMm: 300, ringRadiusMm: 80, ...changes }));
    const cupMm = expect.any(Number);
    expect(weight({ barkFace: 'a' })).toEqual(message('cup.weight-hollow', { cupMm, hollowFace: 'upper' }));
    expect(weight({ barkFace: 'b' })).toEqual(message('cup.weight-hollow', { cupMm, hollowFace: 'lower' }));
    expect(weight({ barkFace: null })).toEqual(message('cup.weight', { cupMm }));
  });

  test('is weight and stickers where much cup is still to come, with the caution that weights fall', () => {
    const input = board({ widthMm: 300, ringRadiusMm: 80 });
    expect(advised(input)).toEqual(expect.arrayContaining(['weight', 'stickers']));
    expect(inEnglish(adviceOn('weight', input)!)).toMatch(/cannot slide off/);
    expect(advised(board({ widthMm: 80, ringRadiusMm: 250 }))).not.toContain('weight');
    // What has dried does not cup further.
    expect(advised(board({ widthMm: 300, ringRadiusMm: 80, profilePct: even(8) }))).not.toContain('weight');
  });

  test('is to seal the ends of a board that is still green', () => {
    expect(advised(board({ profilePct: even(50) }))).toContain('end-seal');
    expect(advised(board({ profilePct: even(18) }))).not.toContain('end-seal');
  });

  test('is to equalize and make a prong test when the shell is far below the core, and to slow down while the core is green', () => {
    expect(adviceOn('uneven', board({ profilePct: drying(8, 16) }))?.code).toBe('cup.uneven');
    expect(adviceOn('uneven', board({ profilePct: drying(14, 45) }))?.code).toBe('cup.uneven-green');
    expect(advised(board({ profilePct: drying(9.5, 10) }))).not.toContain('uneven');
    // A wet board that has only begun to dry: the shell has not shrunk.
    expect(advised(board({ profilePct: drying(40, 60) }))).not.toContain('uneven');
  });

  // As the tab of the thickness shows them: two differences of one day would be a riddle.
  test('names the difference of the shell and the core that pins would read', () => {
    const atPins = { faceAPct: 12.04, faceBPct: 12.2, shellPct: 12.04, corePct: 20.36 };
    expect(adviceOn('uneven', board({ profilePct: drying(9, 20.36), atPins }))).toEqual(
      message('cup.uneven', { differencePoints: 8.4 }),
    );
  });

  test('is always a whole sentence', () => {
    const wide = { widthMm: 400, ringRadiusMm: 80 };
    const messages = [
      board({ ...wide, profilePct: straight(10, 20) }),
      board({ ...wide, profilePct: straight(10, 20), barkFace: null }),
      board({ ...wide, profilePct: straight(10, 20), isBarkOn: true }),
      board({ ...wide, profilePct: straight(20, 10), isBarkOn: true }),
      board({ ...wide, profilePct: drying(8, 16) }),
      board({ ...wide, profilePct: drying(14, 45) }),
    ].flatMap((input) => warpOf(input).advice.map((each) => each.message));
    expect([...codesOf(messages)].sort()).toEqual([
      'cup.bark',
      'cup.bark-and-hollow',
      'cup.end-seal',
      'cup.flip',
      'cup.stickers',
      'cup.uneven',
      'cup.uneven-green',
      'cup.weight',
      'cup.weight-hollow',
    ]);
    expectWhole(messages);
  });
});
