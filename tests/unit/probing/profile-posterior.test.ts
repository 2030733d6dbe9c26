import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chanceAverageAbove,
  chanceDifferenceAbove,
  type KnownOfBoard,
  profilePosterior,
} from '../../../shared-core/probing/readings/profile-posterior.ts';
import { plannedDepthMm } from '../../../shared-core/probing/readings/spots.ts';

const beam: KnownOfBoard = { thicknessMm: 54, emcPct: 9, placeKind: 'shop', isNewHere: null, history: null };
const at = (depthMm: number, mcPct: number, isOnlyPlanned = false) => ({ depthMm, mcPct, isOnlyPlanned });
const of = (readings: ReturnType<typeof at>[], known = beam) => profilePosterior(readings, known, 0.5, 0.85);

describe('a core that no pins reached', () => {
  test('is as wet as drying allows: wetter, and less sure, the further the board is above its air', () => {
    const near = of([at(8, 10), at(8, 10)], { ...beam, emcPct: 9.5 });
    const far = of([at(8, 14), at(8, 14)], { ...beam, emcPct: 7 });
    expect(far.differencePct).toBeGreaterThan(near.differencePct + 2);
    expect(far.differenceSdPct).toBeGreaterThan(near.differenceSdPct);
    expect(chanceDifferenceAbove(far, 5)).toBeGreaterThan(0.3);
    expect(chanceDifferenceAbove(near, 5)).toBeLessThan(0.01);
  });

  test('is less sure in air that changes more, and by a meter that is less sure of the average', () => {
    const doubt = (placeKind: KnownOfBoard['placeKind'], sharedPct = 0.85) =>
      profilePosterior([at(8, 12)], { ...beam, placeKind }, 0.5, sharedPct).differenceSdPct;
    expect(doubt('heated-room')).toBeLessThan(doubt('shop'));
    expect(doubt('shop')).toBeLessThan(doubt('open-shed'));
    expect(doubt('shop', 0.3)).toBeLessThan(doubt('shop') - 0.1);
  });

  test('is further from the shell in a board that came from damper air, and less surely known where nobody knows', () => {
    const [settled, moved, unknown] = [false, true, null].map((isNewHere) =>
      of([at(8, 12)], { ...beam, isNewHere }),
    ) as [ReturnType<typeof of>, ReturnType<typeof of>, ReturnType<typeof of>];
    expect(moved.differencePct).toBeGreaterThan(settled.differencePct + 0.5);
    expect(unknown.differencePct).toBeGreaterThan(settled.differencePct);
    expect(unknown.differencePct).toBeLessThan(moved.differencePct);
    expect(unknown.differenceSdPct).toBeGreaterThan(settled.differenceSdPct);
  });

  test('is told by history where there is one, with its doubt', () => {
    const history = { differencePct: 2, differenceSdPct: 0.4 };
    const known = of([at(8, 14), at(8, 14)], { ...beam, history });
    expect(known.differencePct).toBeCloseTo(2, 1);
    expect(known.differenceSdPct).toBeLessThan(0.6);
  });
});

describe('readings at several known depths', () => {
  const parabola = (u: number, shellPct: number, corePct: number) =>
    corePct - (corePct - shellPct) * (1 - 2 * u) ** 2;

  test('find the average and the core of any parabola, from either face', () => {
    const pct = fc.double({ min: 6, max: 25, noNaN: true });
    const thickness = fc.double({ min: 19, max: 80, noNaN: true });
    fc.assert(
      fc.property(thickness, pct, pct, fc.boolean(), (thicknessMm, shellPct, corePct, isOtherFace) => {
        const known = {
          thicknessMm,
          emcPct: null,
          placeKind: 'shop' as const,
          isNewHere: null,
          history: null,
        };
        const readings = [0.1, 0.2, 0.35, 0.5].map((u) =>
          at((isOtherFace ? 1 - u : u) * thicknessMm, parabola(u, shellPct, corePct)),
        );
        const { averagePct, parts, differencePct } = profilePosterior(readings, known, 0.05, 0.85);
        const span = Math.abs(corePct - shellPct);
        expect(parts.length).toBeGreaterThan(1);
        expect(Math.abs(averagePct - (shellPct + 2 * corePct) / 3)).toBeLessThan(0.01 + 0.01 * span);
        // Shell and core are where spots are planned, the shell at a tenth to a fifth of the thickness.
        const shell = plannedDepthMm('shell', thicknessMm) / thicknessMm;
        const difference = corePct - parabola(shell, shellPct, corePct);
        expect(Math.abs(differencePct - difference)).toBeLessThan(0.03 + 0.03 * span);
      }),
    );
  });

  test('tell it twice as closely where there are four times as many', () => {
    const readings = [at(6, 10), at(14, 11.5), at(27, 12.3)];
    const more = [...readings, ...readings, ...readings, ...readings];
    expect(of(more).spotsPct / of(readings).spotsPct).toBeCloseTo(0.5, 1);
  });
});

describe('a depth that only the plan says', () => {
  const shellAndCore = (isOnlyPlanned: boolean) =>
    of([at(5.5, 12, isOnlyPlanned), at(27, 12.2, isOnlyPlanned)].flatMap((each) => [each, each]));

  test('says little of the core where the readings are alike: the pins may be short', () => {
    const [surely, perhaps] = [shellAndCore(false), shellAndCore(true)];
    expect(surely.differencePct).toBeLessThan(0.8);
    expect(perhaps.differencePct).toBeGreaterThan(surely.differencePct + 0.5);
    expect(chanceDifferenceAbove(perhaps, 3)).toBeGreaterThan(10 * chanceDifferenceAbove(surely, 3));
  });

  test('may lie near the core: a shell that reads like a core read in a cut may be none', () => {
    const room: KnownOfBoard = { ...beam, emcPct: 7, placeKind: 'heated-room' };
    const uneven = (isOnlyPlanned: boolean) => {
      const shell = at(5.5, 10, isOnlyPlanned);
      return chanceDifferenceAbove(of([shell, shell, at(27, 10.2), at(27, 10.2)], room), 3);
    };
    expect(uneven(false)).toBeLessThan(0.001);
    expect(uneven(true)).toBeGreaterThan(0.05);
  });

  test('is taken deeper where the readings differ: short pins read no gradient', () => {
    const flat = of([at(5.5, 12, true), at(27, 12, true)]);
    const steep = of([at(5.5, 9, true), at(27, 16, true)]);
    expect(steep.differencePct).toBeGreaterThan(flat.differencePct + 1.5);
  });
});

test('the chance that the average is above a limit is half at the average, and falls with the distance', () => {
  const made = of([at(12, 10), at(12, 10)]);
  expect(chanceAverageAbove(made, made.averagePct)).toBeCloseTo(0.5, 1);
  // One sided, 10 % of a normal distribution lie beyond 1.28 standard deviations.
  const beyond = made.averagePct + 1.28 * Math.hypot(made.spotsPct, made.sharedPct);
  expect(chanceAverageAbove(made, beyond)).toBeCloseTo(0.1, 1);
});

test('a profile needs a reading', () => {
  expect(() => of([])).toThrow(RangeError);
});
