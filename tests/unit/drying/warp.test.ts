import { describe, expect, test } from 'vitest';
import { shrunkPct } from '../../../shared-core/wood/movement/shrinkage.ts';
import { faceCupMm, type WarpInput, warpOf, warpSchema } from '../../../shared-core/wood/movement/warp.ts';

/** Northern red oak, Wood Handbook, Table 4-3. */
const oak = { radialPct: 4, tangentialPct: 8.6 };

const even = (mc: number): number[] => Array.from({ length: 21 }, () => mc);
const straight = (a: number, b: number): number[] =>
  Array.from({ length: 21 }, (_, i) => a + ((b - a) * i) / 20);
/** Faces at `shell`, middle at `core`, a parabola between. */
const drying = (shell: number, core: number): number[] =>
  Array.from({ length: 21 }, (_, i) => shell + (core - shell) * 4 * (i / 20) * (1 - i / 20));

const board = (changes: Partial<WarpInput> = {}): WarpInput => ({
  thicknessMm: 28,
  widthMm: 200,
  sawing: 'flat',
  ringRadiusMm: 120,
  barkFace: 'a',
  isBarkOn: false,
  ...oak,
  profilePct: even(20),
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

  test('does not come from differences above fibre saturation, where wood does not shrink', () => {
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
  test('is to turn a board whose faces differ, and names the wetter face', () => {
    const { advice } = warpOf(board({ profilePct: straight(10, 18) }));
    expect(advice.find((a) => a.about === 'flip')!.sentence).toMatch(
      /turn the board over so that the lower face meets the open air/,
    );
    expect(advised(board({ profilePct: even(12) }))).not.toContain('flip');
  });

  // Bark sheds water and keeps it in (common practice, no source).
  test('is to take bark off, and not to turn the board over, where bark keeps that face wet', () => {
    const input = board({ profilePct: straight(18, 10), isBarkOn: true });
    expect(advised(input)).not.toContain('flip');
    const { sentence } = warpOf(input).advice.find((a) => a.about === 'bark')!;
    expect(sentence).toMatch(/^Take the bark off its upper face.*lower face is 7\.\d % drier/);
    // The other face is the wet one: both.
    const both = board({ profilePct: straight(18, 10), isBarkOn: true, barkFace: 'b' });
    expect(advised(both)).toEqual(expect.arrayContaining(['bark', 'flip']));
    expect(advised(board())).not.toContain('bark');
  });

  test('names the side that will be hollow only where it is known', () => {
    const weight = (changes: Partial<WarpInput>) =>
      warpOf(board({ widthMm: 300, ringRadiusMm: 80, ...changes })).advice.find((a) => a.about === 'weight')!
        .sentence;
    expect(weight({ barkFace: 'a' })).toMatch(/hollow on its upper side/);
    expect(weight({ barkFace: 'b' })).toMatch(/hollow on its lower side/);
    expect(weight({ barkFace: null })).not.toMatch(/hollow on/);
  });

  test('is weight and stickers where much cup is still to come, with the caution that weights fall', () => {
    const input = board({ widthMm: 300, ringRadiusMm: 80 });
    expect(advised(input)).toEqual(expect.arrayContaining(['weight', 'stickers']));
    expect(warpOf(input).advice.find((a) => a.about === 'weight')!.sentence).toMatch(/slide/);
    expect(advised(board({ widthMm: 80, ringRadiusMm: 250 }))).not.toContain('weight');
    // What has dried does not cup further.
    expect(advised({ ...input, profilePct: even(8) })).not.toContain('weight');
  });

  test('is to seal the ends of a board that is still green', () => {
    expect(advised(board({ profilePct: even(50) }))).toContain('end-seal');
    expect(advised(board({ profilePct: even(18) }))).not.toContain('end-seal');
  });

  test('warns of casehardening when the shell is far below the core, and to slow down while the core is green', () => {
    const dry = warpOf(board({ profilePct: drying(8, 16) })).advice.find((a) => a.about === 'casehardening')!;
    expect(dry.sentence).toMatch(/prong/);
    const green = warpOf(board({ profilePct: drying(14, 45) })).advice.find(
      (a) => a.about === 'casehardening',
    )!;
    expect(green.sentence).toMatch(/Slow the drying/);
    expect(advised(board({ profilePct: drying(9.5, 10) }))).not.toContain('casehardening');
    // A wet board that has only begun to dry: the shell has not shrunk.
    expect(advised(board({ profilePct: drying(40, 60) }))).not.toContain('casehardening');
  });

  test('always says where it is from', () => {
    for (const profilePct of [straight(10, 20), drying(14, 45), even(50)]) {
      for (const { source, sentence } of warpOf(board({ profilePct, widthMm: 400 })).advice) {
        expect(source).toMatch(/no source|from memory/);
        expect(sentence).toMatch(/\.$/);
      }
    }
  });
});
