import { describe, expect, test } from 'vitest';
import { correctReading } from '../../shared-core/wood/moisture/correction.ts';
import { resistanceCurves } from '../../shared-core/wood/moisture/resistance-curves.ts';
import { atWoodTempPct, byEachCorrection, james } from '../../shared-core/wood/moisture/temperature.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';

/**
 * W. L. James, Electric Moisture Meters for Wood, FPL-GTR-6 (1988), Figure 5, as digitized in public code: points to add
 * to readings of 6, 8, 10 … 24 % in wood of that temperature, zero at 70 °F. Above 28 % MC the digitized table is
 * extrapolated: left out.
 */
const FIGURE_5: [woodTempC: number, toAdd: (number | null)[]][] = [
  [-20, [4.7, 5.5, 6.8, 8.1, 8.2, 9.1, null, null, null, null]],
  [-10, [3.2, 3.8, 4.4, 5.2, 6.2, 6.2, 7, 7.8, null, null]],
  [0, [1.9, 2.4, 2.7, 3.1, 3.6, 4.3, 4.2, 4.8, 5.2, null]],
  [10, [0.9, 1.1, 1.3, 1.5, 1.7, 1.9, 2.2, 2.2, 2.5, 2.7]],
  [20, [0.1, 0.1, 0.1, 0.1, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2]],
  [30, [-0.7, -0.8, -0.9, -1.1, -1.2, -1.3, -1.4, -1.6, -1.8, -1.8]],
  [40, [-1.4, -1.6, -1.8, -2.2, -2.4, -2.6, -2.8, -3.1, -3.4, -3.7]],
  [50, [-2.1, -2.4, -2.7, -3.1, -3.5, -3.8, -4.1, -4.4, -4.8, -5.2]],
];
const ZERO_C = 21.1;

describe('James 1988, Figure 5', () => {
  // Read off a drawing, to 0.1: 0.3 points; in the deep cold, where its lines have kinks, 0.7 and half of the last digit.
  test.each(FIGURE_5)('in wood of %i °C', (woodTempC, toAdd) => {
    const most = woodTempC >= -5 ? 0.3 : 0.75;
    for (const [index, points] of toAdd.entries()) {
      if (points === null) continue;
      const readingPct = 6 + 2 * index;
      const off = atWoodTempPct(james, readingPct, woodTempC, ZERO_C) - readingPct - points;
      expect(Math.abs(off), `${readingPct} %`).toBeLessThan(most);
    }
  });

  test('its worked example: 18 % shown in wood of 120 °F means about 14 %', () => {
    expect(Math.abs(atWoodTempPct(james, 18, 48.9, ZERO_C) - 14)).toBeLessThan(0.1);
  });

  test('its worked example in ohms of Douglas-fir: what reads 18 % at 70 °F is 14 % at 120 °F', () => {
    const species = builtInSpecies.find(({ id }) => id === 'douglas-fir-coast')!;
    const curve = resistanceCurves.get('douglas-fir-coast')!;
    // A meter that is right at 70 °F shows 18 %: at the 80 °F of Table 1 that resistance is half a point drier wood.
    const onTablePct = atWoodTempPct(james, 18, curve.tempC, ZERO_C);
    const [below, above] = [17, 18].map((mc) => curve.points.find(([pct]) => pct === mc)![1]) as [
      number,
      number,
    ];
    const ohms = 1e6 * below * (above / below) ** (onTablePct - 17);
    const corrected = correctReading({
      value: ohms,
      unit: 'ohm',
      woodTempC: 48.9,
      species,
      scale: { kind: 'ohms' },
    });
    expect(Math.abs(corrected.mcPct! - 14)).toBeLessThan(0.15);
  });

  test('belongs to his table: the resistance of the table at 80 °F comes out as its MC', () => {
    for (const species of builtInSpecies) {
      const curve = species.curveId === null ? undefined : resistanceCurves.get(species.curveId);
      if (curve?.tempC !== 26.7) continue;
      for (const [mcPct, megohm] of curve.points.filter(([pct]) => pct <= 20)) {
        const read = { value: 1e6 * megohm, unit: 'ohm', woodTempC: 26.7, scale: { kind: 'ohms' } } as const;
        expect(correctReading({ ...read, species }).mcPct).toBeCloseTo(mcPct, 4);
      }
    }
  });

  test('used as it stands on the table it would leave half a point', () => {
    const at80 = atWoodTempPct(james, 14, 26.7, ZERO_C);
    expect(14 - at80).toBeGreaterThan(0.5);
    expect(14 - at80).toBeLessThan(0.8);
  });
});

describe('the published corrections side by side', () => {
  test('16 % shown in wood of 0 °C: +4.3 by the figure, where its neighbors are +3.9 and +4.2', () => {
    const by = byEachCorrection(16, 0, ZERO_C);
    expect(Math.abs(by.james - 16 - 4.1)).toBeLessThan(0.25);
  });

  // The formula itself, with its own neutral temperature: (16 + 0.567) / 0.881 = 18.80.
  test('16 % shown in wood of 0 °C: +2.8 by Pfaff and Garrahan, less 0.2 for a scale of 70 °F', () => {
    expect(Math.abs(byEachCorrection(16, 0, 22.7).pfaffGarrahan - 18.8)).toBeLessThan(0.01);
    expect(Math.abs(byEachCorrection(16, 0, ZERO_C).pfaffGarrahan - 18.6)).toBeLessThan(0.01);
  });

  // H. Forsén and V. Tarvainen, VTT Publications 420 (2000), abstract.
  test.each([-10, 0, 10, 40])('VTT 420: 0.10 to 0.15 points for each °C, in wood of %i °C', (woodTempC) => {
    const perK = (byEachCorrection(16, woodTempC, ZERO_C).vtt - 16) / (ZERO_C - woodTempC);
    expect(perK).toBeGreaterThan(0.1);
    expect(perK).toBeLessThan(0.15);
  });
});
