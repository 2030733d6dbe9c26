import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  AIR_SD_PCT,
  chanceAverageAbove,
  chanceDifferenceAbove,
  EXPONENTS,
  type KnownOfBoard,
  profilePosterior,
  SPELL_SD_PCT,
  STEEPNESS,
  shellAhead,
  UNKNOWN_AIR,
} from '../../../shared-core/probing/readings/profile-posterior.ts';
import { plannedDepthMm } from '../../../shared-core/probing/readings/spots.ts';
import { normalCdf } from '../../../shared-core/wood/maths/gaussian.ts';

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

/** Average and shell–core difference, each with its standard deviation, summed over a grid of all that they can be. */
function byGrid(
  readings: ReturnType<typeof at>[],
  known: KnownOfBoard,
  scatterPct: number,
  sharedPct: number,
) {
  const { thicknessMm, emcPct, placeKind, isNewHere, isShellAlone = false } = known;
  const aboutPct = readings.reduce((sum, { mcPct }) => sum + mcPct, 0) / readings.length;
  const airPct = emcPct ?? aboutPct - UNKNOWN_AIR.abovePct;
  const airSdPct = Math.hypot(emcPct === null ? UNKNOWN_AIR.sdPct : AIR_SD_PCT, sharedPct);
  const ahead = shellAhead(isNewHere);
  const sdAt = (above: number) =>
    Math.hypot(STEEPNESS.sd * above, STEEPNESS.mean * airSdPct, ahead.sdPoints, SPELL_SD_PCT[placeKind]);
  const normal = (x: number, sd: number) => Math.exp(-((x / sd) ** 2) / 2) / sd;
  const gradientChance = (gradient: number, average: number): number => {
    const above = average - airPct;
    const drying = normal(gradient - STEEPNESS.mean * above - ahead.points, sdAt(aboutPct - airPct));
    if (emcPct === null || !isShellAlone) return drying;
    const isAbove = normalCdf(above / airSdPct);
    return isAbove * drying + (1 - isAbove) * normal(gradient, sdAt(0));
  };
  const sums = { weight: 0, average: 0, average2: 0, difference: 0, difference2: 0 };
  const shellShare = 1 - (2 * plannedDepthMm('shell', thicknessMm)) / thicknessMm;
  for (const [chance, depthsMm] of tipsOf(readings, thicknessMm))
    for (const exponent of EXPONENTS) {
      const xs = depthsMm.map((mm) => 1 / (exponent + 1) - Math.abs(1 - (2 * mm) / thicknessMm) ** exponent);
      for (let average = aboutPct - 6; average < aboutPct + 12; average += 0.3)
        for (let gradient = -16; gradient < 32; gradient += 0.5) {
          const off = xs.reduce((sum, x, n) => sum + (readings[n]!.mcPct - average - gradient * x) ** 2, 0);
          const weight = chance * Math.exp(-off / scatterPct ** 2 / 2) * gradientChance(gradient, average);
          const difference = gradient * shellShare ** exponent;
          sums.weight += weight;
          sums.average += weight * average;
          sums.average2 += weight * average ** 2;
          sums.difference += weight * difference;
          sums.difference2 += weight * difference ** 2;
        }
    }
  const [averagePct, differencePct] = [sums.average / sums.weight, sums.difference / sums.weight];
  return {
    averagePct,
    differencePct,
    spotsPct: Math.sqrt(sums.average2 / sums.weight - averagePct ** 2),
    differenceSdPct: Math.sqrt(sums.difference2 / sums.weight - differencePct ** 2),
  };
}

/** Pins of 5 or 8 mm, or longer by thirds up to the plan; one time in five all the way in. Common practice, no source. */
function tipsOf(readings: ReturnType<typeof at>[], thicknessMm: number): [number, number[]][] {
  const planned = readings.filter(({ isOnlyPlanned }) => isOnlyPlanned);
  if (planned.length === 0) return [[1, readings.map(({ depthMm }) => depthMm)]];
  const longerMm = Math.max(0, ...planned.map(({ depthMm }) => depthMm - 8));
  const tips = (of: (depthMm: number) => number) =>
    readings.map(({ depthMm, isOnlyPlanned }) => (isOnlyPlanned ? of(depthMm) : depthMm));
  return [
    ...[5, 8, 8 + 0.33 * longerMm, 8 + 0.67 * longerMm, 8 + longerMm].map((mm): [number, number[]] => [
      0.8 / 5,
      tips((depthMm) => Math.min(depthMm, mm)),
    ]),
    ...[5, 8, 15, 25].map((mm): [number, number[]] => [0.2 / 4, tips(() => Math.min(mm, thicknessMm / 2))]),
  ];
}

// The closed form against a plain sum over a grid, by Bayes' rule (any textbook; from memory).
describe('average and difference are those of a plain sum over all that they can be', () => {
  const shell = [at(5.5, 12), at(5.5, 12.4)];
  const planned = [at(5.5, 11, true), at(5.5, 11.3, true), at(20, 13, true), at(20, 13.4, true)];
  const alone = { ...beam, isShellAlone: true };
  test.each([
    ['a shell alone, above its air', shell, alone],
    ['a shell alone, about as dry as its air', shell, { ...alone, emcPct: 12 }],
    ['a shell alone, drier than its air', shell, { ...alone, emcPct: 14, isNewHere: true }],
    ['a shell alone, in air that nobody knows', shell, { ...alone, emcPct: null }],
    ['shell and core', [...shell, at(27, 14), at(27, 14.5)], { ...beam, emcPct: 12 }],
    ['readings of which only the plan says how deep', planned, beam],
    ['shells of which only the plan says how deep', planned.slice(0, 2), { ...beam, isNewHere: false }],
    ['a cut beside planned shells', [...planned.slice(0, 2), at(27, 14)], beam],
  ])('%s', (_, readings, known) => {
    const made = of(readings, known);
    const summed = byGrid(readings, known, 0.5, 0.85);
    for (const name of ['averagePct', 'differencePct', 'spotsPct', 'differenceSdPct'] as const)
      expect(made[name], name).toBeCloseTo(summed[name], 2);
  });

  test('where they are far from their air, or agree with one profile alone, they are numbers still', () => {
    const wet = profilePosterior([at(5.5, 60)], { ...alone, emcPct: 5 }, 0.5, 0.1);
    expect(wet.averagePct).toBeGreaterThan(59);
    const sure = profilePosterior([at(5.5, 8), at(13.5, 14), at(27, 20)], beam, 0.02, 0.85);
    expect(sure.averagePct).toBeGreaterThan(8);
    expect(sure.averagePct).toBeLessThan(20);
  });
});
