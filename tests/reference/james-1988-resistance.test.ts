import { describe, expect, test } from 'vitest';
import { correctReading } from '../../shared-core/wood/moisture/correction.ts';
import { curveRangePct, log10OhmsAt, mcAtLog10Ohms } from '../../shared-core/wood/moisture/resistance.ts';
import { resistanceCurves } from '../../shared-core/wood/moisture/resistance-curves.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';

// W. L. James, Electric Moisture Meters for Wood, FPL-GTR-6 (1988), Table 1 (from memory): megohms along the grain
// at 80 °F, MC 7 to 25 %.
const HEAD = [7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25];
const TABLE: [string, ...number[]][] = [
  [
    'douglas-fir-coast',
    22400,
    4780,
    1660,
    630,
    265,
    120,
    60,
    33,
    18.6,
    11.2,
    7.1,
    4.6,
    3.09,
    2.14,
    1.51,
    1.1,
    0.79,
    0.6,
    0.46,
  ],
  [
    'pine-eastern-white',
    20900,
    5620,
    2090,
    850,
    405,
    200,
    102,
    58,
    33.1,
    19.9,
    12.3,
    7.9,
    5.01,
    3.31,
    2.19,
    1.51,
    1.05,
    0.74,
    0.52,
  ],
  [
    'maple-sugar',
    72400,
    13800,
    3160,
    690,
    250,
    105,
    53,
    29,
    16.6,
    10.2,
    6.8,
    4.5,
    3.16,
    2.24,
    1.62,
    1.23,
    0.98,
    0.75,
    0.6,
  ],
  [
    'oak-commercial-red',
    14400,
    4790,
    1590,
    630,
    265,
    125,
    63,
    32,
    18.2,
    11.3,
    7.3,
    4.6,
    3.02,
    2.09,
    1.45,
    0.95,
    0.8,
    0.63,
    0.5,
  ],
  [
    'oak-commercial-white',
    17400,
    3550,
    1100,
    415,
    170,
    80,
    42,
    22,
    12.6,
    7.2,
    4.3,
    2.7,
    1.7,
    1.15,
    0.79,
    0.6,
    0.49,
    0.44,
    0.41,
  ],
  [
    'walnut-black',
    51300,
    9770,
    2630,
    890,
    355,
    155,
    78,
    41,
    22.4,
    12.9,
    7.2,
    4.9,
    3.16,
    2.14,
    1.48,
    1.02,
    0.72,
    0.51,
    0.38,
  ],
  [
    'elm-american',
    18200,
    2000,
    350,
    110,
    45,
    20,
    12,
    7,
    3.9,
    2.3,
    1.5,
    1.0,
    0.66,
    0.48,
    0.42,
    0.4,
    0.4,
    0.4,
    0.4,
  ],
];

describe('James 1988, Table 1: resistance of wood by species', () => {
  for (const [curveId, ...megohms] of TABLE) {
    const curve = resistanceCurves.get(curveId)!;
    const usable = megohms
      .map((megohm, i): [number, number] => [HEAD[i]!, megohm])
      .filter(([mcPct]) => mcPct <= curveRangePct(curve).maxPct);

    test.each(usable)(`${curveId} at %f %% is %f megohm, both ways`, (mcPct, megohm) => {
      // Exact at the table's own points: the curve goes through them.
      expect(10 ** (log10OhmsAt(curve, mcPct).log10Ohms - 6)).toBeCloseTo(megohm, 6);
      const back = mcAtLog10Ohms(curve, Math.log10(megohm * 1e6));
      expect(back.mcPct).toBeCloseTo(mcPct, 6);
      expect(back.outsideCurve).toBe(false);
    });
  }

  test.each([
    // Where the column stops falling by 13 % per % MC, it is no longer used: the curve's last point.
    ['ash-commercial-white', 22],
    ['elm-american', 20],
    ['hickory-true', 22],
    ['oak-commercial-white', 23],
    ['mahogany-american', 23],
    ['walnut-black', 25],
    ['douglas-fir-coast', 25],
  ])('the column of %s is used up to %i %%', (curveId, maxPct) => {
    expect(curveRangePct(resistanceCurves.get(curveId)!).maxPct).toBe(maxPct);
  });
});

describe('A meter made for Douglas-fir at 80 °F, used at 80 °F: worked by hand from Table 1', () => {
  // By hand: the megohms of the shown % in the Douglas-fir row, found in the species' row by straight lines in
  // log resistance. The cubic differs from straight lines by a few hundredths of a percent.
  test.each([
    [12, 'oak-white', 11.46], // 120 lies between 170 (11 %) and 80 (12 %)
    [12, 'oak-northern-red', 12.06], // between 125 (12 %) and 63 (13 %)
    [10, 'maple-sugar', 10.09], // 630 between 690 (10 %) and 250 (11 %)
    [8, 'maple-sugar', 8.72], // 4780 between 13800 (8 %) and 3160 (9 %)
    [15, 'elm-american', 12.14], // 18.6 between 20 (12 %) and 12 (13 %)
    [9, 'walnut-black', 9.42], // 1660 between 2630 (9 %) and 890 (10 %)
    [20, 'pine-eastern-white', 21.06], // 2.14 between 2.19 (21 %) and 1.51 (22 %)
  ])('shown %f %% in %s is %f %%', (shownPct, speciesId, byHand) => {
    const corrected = correctReading({
      value: shownPct,
      unit: 'pct',
      woodTempC: 26.7,
      species: builtInSpecies.find((species) => species.id === speciesId)!,
      scale: { kind: 'species', speciesId: null, curveId: 'douglas-fir-coast', tempC: 26.7 },
    });
    expect(Math.abs(corrected.mcPct! - byHand)).toBeLessThan(0.06);
    expect(corrected.steps.map(({ step }) => step)).toEqual(['temperature', 'species-curve']);
  });
});
