import { describe, expect, test } from 'vitest';
import { inversePositive, times } from '../../../shared-core/wood/maths/gaussian.ts';
import {
  biasSdPct,
  type KnownMoisture,
  learnedBias,
  type MeterOnSpecies,
  PRIOR_SD_PCT,
} from '../../../shared-core/wood/moisture/meter-bias.ts';

const on = (
  meterId: number | null,
  speciesId: string,
  more: Partial<MeterOnSpecies> = {},
): MeterOnSpecies => ({
  meterId,
  speciesId,
  meterScale: 1,
  speciesShare: 0,
  scaleShare: 0,
  ...more,
});

let boards = 0;
const check = (of: MeterOnSpecies, offPct: number, more: Partial<KnownMoisture> = {}): KnownMoisture => {
  boards += 1;
  return { ...of, boardId: `piece ${boards}`, mcPct: 10, offPct, sdPct: 0.3, shared: null, ...more };
};

/**
 * The same model solved otherwise: every effect is a parameter of one linear model, whose posterior is (P + X'WX)⁻¹, where
 * `learnedBias` never names the effects and works by covariances of boards.
 */
function byLinearModel(of: MeterOnSpecies, known: readonly KnownMoisture[]) {
  type Effect = { name: string; variance: number; at: (one: MeterOnSpecies & { mcPct: number }) => number };
  const both = ({ meterId, speciesId }: MeterOnSpecies) => `${meterId} ${speciesId}`;
  const all = [...known, { ...of, mcPct: 0, boardId: 'none' }];
  const effects = new Map<string, Effect>();
  const add = (name: string, variance: number, at: Effect['at']) => {
    if (variance > 0) effects.set(name, { name, variance, at });
  };
  for (const each of all) {
    const is = (value: unknown, its: unknown) => (value === its ? 1 : 0);
    const { meterId, speciesId } = each;
    add(`m ${meterId}`, PRIOR_SD_PCT.meter ** 2, (one) => is(one.meterId, meterId) * one.meterScale);
    add(`s ${speciesId}`, PRIOR_SD_PCT.species ** 2, (one) => is(one.speciesId, speciesId) * one.meterScale);
    add(`ms ${both(each)}`, PRIOR_SD_PCT.both ** 2, (one) => is(both(one), both(each)) * one.meterScale);
    add(
      `species share ${speciesId}`,
      1,
      (one) => is(one.speciesId, speciesId) * one.speciesShare * one.mcPct,
    );
    add(`scale share ${both(each)}`, 1, (one) => is(both(one), both(each)) * one.scaleShare * one.mcPct);
    add(`b ${each.boardId}`, PRIOR_SD_PCT.board ** 2, (one) =>
      'boardId' in one && one.boardId === each.boardId ? one.meterScale : 0,
    );
    const shared = 'shared' in each ? each.shared : null;
    if (shared)
      add(`air ${shared.with}`, 1, (one) => {
        const its = (one as KnownMoisture).shared;
        return its?.with === shared.with ? its.sdPct : 0;
      });
  }
  const list = [...effects.values()];
  const rows = known.map((one) => list.map((effect) => effect.at(one)));
  const precision = list.map((effect, i) =>
    list.map(
      (_, j) =>
        (i === j ? 1 / effect.variance : 0) +
        known.reduce((sum, one, n) => sum + (rows[n]![i]! * rows[n]![j]!) / one.sdPct ** 2, 0),
    ),
  );
  const covariance = inversePositive(precision)!;
  const vector = list.map((_, i) =>
    known.reduce((sum, one, n) => sum + (rows[n]![i]! * one.offPct) / one.sdPct ** 2, 0),
  );
  const mean = times(covariance, vector);
  // Sum of squares that the model leaves: of the residuals, and of the effects against their prior.
  const squares =
    known.reduce(
      (sum, one, n) =>
        sum + ((one.offPct - rows[n]!.reduce((fit, x, i) => fit + x * mean[i]!, 0)) / one.sdPct) ** 2,
      0,
    ) + list.reduce((sum, effect, i) => sum + mean[i]! ** 2 / effect.variance, 0);
  const factor = (8 + squares) / (8 + known.length);
  return (mcPct: number) => {
    const row = list.map((effect) => effect.at({ ...of, mcPct }));
    return {
      offPct: row.reduce((sum, x, i) => sum + x * mean[i]!, 0),
      sdPct: Math.sqrt(factor * row.reduce((sum, x, i) => sum + x * times(covariance, row)[i]!, 0)),
    };
  };
}

describe('the closed form is the general linear model', () => {
  const walnut = on(1, 'walnut');
  const uncorrected = on(1, 'cherry', { speciesShare: 0.07 });
  const typed = on(null, 'cherry', { speciesShare: 0.07, scaleShare: 0.035 });
  const known = [
    check(walnut, 0.9),
    check(walnut, 1.1, { mcPct: 14, sdPct: 0.5 }),
    check(on(2, 'walnut', { meterScale: 1.3 }), -0.4),
    check(uncorrected, 1.8, { mcPct: 9 }),
    check(uncorrected, 2.6, { mcPct: 17 }),
    check(typed, 0.2, { mcPct: 12 }),
    check(on(1, 'oak'), 0.5, { boardId: 'sample 7', shared: { with: 'shop', sdPct: 1.2 } }),
    check(on(1, 'oak'), 0.7, { boardId: 'sample 7', shared: { with: 'shop', sdPct: 1.2 } }),
  ];
  test.each([
    ['the meter on a species with checks', walnut],
    ['on a species without a correction', uncorrected],
    ['typed, of an unknown scale', typed],
    ['on a species never checked', on(1, 'elm')],
    ['another meter on a checked species', on(3, 'walnut')],
  ])('%s', (_, of) => {
    const learned = learnedBias(of, known)!;
    const expected = byLinearModel(of, known);
    for (const mcPct of [6, 12, 20]) {
      expect((learned.a - 1) * mcPct + learned.b).toBeCloseTo(expected(mcPct).offPct, 8);
      expect(biasSdPct(learned, mcPct)).toBeCloseTo(expected(mcPct).sdPct, 8);
    }
  });

  test('one check of one meter, by brute force over meter, species and both', () => {
    const only = [check(walnut, 1.4)];
    const { meter, species, both, board } = PRIOR_SD_PCT;
    const steps = Array.from({ length: 81 }, (_, n) => -3 + 0.075 * n);
    let [weight, sum, square] = [0, 0, 0];
    for (const m of steps)
      for (const s of steps)
        for (const ms of steps) {
          const off = m + s + ms;
          const z = (m / meter) ** 2 + (s / species) ** 2 + (ms / both) ** 2;
          const misfit = (1.4 - off) ** 2 / (board ** 2 + 0.3 ** 2);
          const w = Math.exp(-0.5 * (z + misfit));
          weight += w;
          sum += w * off;
          square += w * off * off;
        }
    const learned = learnedBias(walnut, only)!;
    expect(learned.b).toBeCloseTo(sum / weight, 4);
    const z = 1.4 ** 2 / (meter ** 2 + species ** 2 + both ** 2 + board ** 2 + 0.3 ** 2);
    const sdPct = Math.sqrt(square / weight - (sum / weight) ** 2) * Math.sqrt((8 + z) / 9);
    expect(biasSdPct(learned, 10)).toBeCloseTo(sdPct, 4);
  });
});

describe('what is learned', () => {
  const walnut = on(1, 'walnut');
  const many = (count: number, offPct: number) => Array.from({ length: count }, () => check(walnut, offPct));

  test('nothing, where no board is of this meter or this species', () => {
    expect(learnedBias(on(2, 'oak'), many(5, 1))).toBeNull();
    expect(learnedBias(walnut, [])).toBeNull();
  });

  test('a first check moves it part of the way, more checks most of it', () => {
    const [one, five, twenty] = [1, 5, 20].map((count) => learnedBias(walnut, many(count, 1))!.b);
    expect(one).toBeGreaterThan(0.4);
    expect(one).toBeLessThan(0.8);
    expect(five).toBeGreaterThan(0.85);
    expect(twenty).toBeGreaterThan(0.95);
    expect(twenty).toBeLessThan(1);
  });

  test('checks of one species tell part of it for another, and less of another meter', () => {
    const known = many(10, 1);
    const own = learnedBias(walnut, known)!;
    const otherSpecies = learnedBias(on(1, 'oak'), known)!;
    const otherMeter = learnedBias(on(2, 'walnut'), known)!;
    expect(own.b).toBeGreaterThan(otherSpecies.b);
    expect(otherSpecies.b).toBeGreaterThan(otherMeter.b);
    expect(otherMeter.b).toBeGreaterThan(0.05);
    expect(biasSdPct(own, 10)).toBeLessThan(biasSdPct(otherSpecies, 10));
  });

  test('the more checks agree, the surer; checks that scatter make boards less sure', () => {
    const [one, five, twenty] = [1, 5, 20].map((count) =>
      biasSdPct(learnedBias(walnut, many(count, 0.3))!, 10),
    );
    expect(five).toBeLessThan(one!);
    expect(twenty).toBeLessThan(five!);
    const scattered = Array.from({ length: 20 }, (_, n) => check(walnut, n % 2 === 0 ? 2.5 : -2.5));
    expect(learnedBias(walnut, scattered)!.boardSdPct).toBeGreaterThan(1.2);
    expect(learnedBias(walnut, many(20, 0.3))!.boardSdPct).toBeLessThan(PRIOR_SD_PCT.board);
  });

  test('of a species without a correction what is off grows with the MC, and so does its doubt', () => {
    const cherry = on(1, 'cherry', { speciesShare: 0.07 });
    const learned = learnedBias(
      cherry,
      Array.from({ length: 8 }, () => check(cherry, 1.5, { mcPct: 10 })),
    )!;
    expect(learned.a).toBeGreaterThan(1.02);
    expect(biasSdPct(learned, 20)).toBeGreaterThan(biasSdPct(learned, 10) + 0.2);
  });

  test('many boards in one room never tell more than the room’s own air is known to', () => {
    const inShop = Array.from({ length: 60 }, () =>
      check(walnut, 1, { shared: { with: 'shop', sdPct: 1.2 } }),
    );
    const learned = learnedBias(walnut, inShop)!;
    expect(learned.b).toBeLessThan(0.4);
  });

  test('an uncertainty of nothing is refused', () => {
    expect(() => learnedBias(walnut, [check(walnut, 1, { sdPct: Number.NaN })])).toThrow(RangeError);
  });
});
