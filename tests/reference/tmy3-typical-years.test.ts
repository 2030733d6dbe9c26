/**
 * S. Wilcox and W. Marion, User's Manual for TMY3 Data Sets, NREL/TP-581-43156 (2008): hourly temperature and humidity of
 * a typical year. The months of each station were worked out from its hours.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import seeds from '../../seeds/weather-stations.json' with { type: 'json' };
import { emcOfYear } from '../../shared-core/wood/climate/climate.ts';
import { emcPct } from '../../shared-core/wood/climate/emc.ts';
import { epwYear } from '../../shared-core/wood/climate/epw.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import { stationListOf } from '../../shared-core/wood/climate/station.ts';
import {
  dryingGrid,
  LawTables,
  parabolicStart,
  simulateDrying,
  woodDryingLaw,
} from '../../shared-core/wood/drying/drying-model.ts';
import { mean } from '../../shared-core/wood/maths/mean.ts';
import { epwText, MONTH_DAYS } from './epw-text.ts';

const { years, states } = stationListOf(seeds);
const hours = readFileSync(join(import.meta.dirname, 'tmy3-asheville-hours.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number) as [tempC: number, rhPct: number]);
const yearOf = (wmo: string) => years.find(({ station }) => station.wmo === wmo)!;

describe('Weather stations, by the TMY3 typical years', () => {
  test('all 1,020 are there, each once, somewhere in the United States', () => {
    expect(new Set(years.map(({ station }) => station.wmo)).size).toBe(1020);
    expect(new Set(years.map(({ station: { name, state } }) => `${name}, ${state}`)).size).toBe(1020);
    for (const { station, air } of years) {
      expect(Object.keys(states)).toContain(station.state);
      // From Guam, at 13° north, to Barrow, at 71°.
      expect(station.latitude).toBeGreaterThan(13);
      expect(station.latitude).toBeLessThan(72);
      expect(air).toHaveLength(12);
    }
  });

  // January and July: °C, % RH, % EMC weighted by vapor pressure, from the hours.
  test.each([
    ['723150', 'Asheville', 'NC', [1.4, 71, 16.4], [22.5, 77, 16.1], 4.04, 0.52],
    ['723650', 'Albuquerque', 'NM', [2.6, 53, 9.4], [25.6, 44, 7.5], 2.56, 0.63],
    ['727450', 'Duluth', 'MN', [-13, 72, 16.5], [17.8, 76, 15.1], 4.01, 0.46],
  ] as const)('%s is %s, %s', (wmo, name, state, january, july, sdPct, lag) => {
    const { station, air } = yearOf(wmo);
    expect(station).toMatchObject({ name, state, days: { sdPct, lag } });
    const shown = ({ tempC, rh, emcPct: emc }: MonthlyAir[number]) => [tempC, Math.round(rh * 100), emc];
    expect([air[0]!, air[6]!].map(shown)).toEqual([january, july]);
  });

  test("a weather file of Asheville's hours gives the months of its station", () => {
    const read = epwYear(epwText(hours, 'Asheville Regional Arpt', 'NC'));
    if (!read.ok) throw new Error(read.problem.code);
    const { air, days, siteName } = read.value;
    const { station, air: listed } = yearOf('723150');
    expect(siteName).toBe('Asheville Regional Arpt, NC');
    for (const [month, { tempC, rh, emcPct: emc = Number.NaN }] of air.entries()) {
      // Listed to 0.1 °C, 1 % and 0.1 %; humidity above 99 % is 99 % here, which takes up to 0.2 points off.
      expect(Math.abs(tempC - listed[month]!.tempC)).toBeLessThan(0.06);
      expect(Math.abs(rh - listed[month]!.rh)).toBeLessThan(0.006);
      expect(Math.abs(emc - listed[month]!.emcPct!)).toBeLessThan(0.25);
    }
    expect(days.sdPct).toBeCloseTo(station.days.sdPct, 0);
    expect(days.lag).toBeCloseTo(station.days.lag, 1);
  });
});

describe('A 1 in board in the hours of Asheville', () => {
  const hourly = hours.map(([tempC, rhPct]) => ({ tempC, emc: emcPct(tempC, Math.min(0.99, rhPct / 100)) }));
  const { air } = yearOf('723150');
  const observeS = Array.from({ length: 9 }, (_, month) => (month + 4) * 30 * 86_400);
  function averages(segments: { durationS: number; emc: number; tempC: number }[]): Float64Array {
    const grid = dryingGrid(25.4, true, 12);
    return simulateDrying({
      grid,
      tables: new LawTables(woodDryingLaw(0.5)),
      startPct: parabolicStart(grid, 14, 1),
      segments: segments.map(({ durationS, emc, tempC }) => ({
        durationS,
        emcStartPct: emc,
        emcEndPct: emc,
        tempC: Math.round(tempC * 2) / 2,
      })),
      diffusivityFactor: 0.55,
      faceFactors: [0.1, 0.1],
      emcOffsetPct: 0,
      tolerancePct: 0.05,
      observeS,
      depthFractions: [],
    }).averagePct;
  }
  const inMonths = (emcs: number[]) =>
    averages(
      emcs.map((emc, month) => ({ durationS: MONTH_DAYS[month]! * 86_400, emc, tempC: air[month]!.tempC })),
    );
  const inHours = averages(hourly.map((hour) => ({ durationS: 3600, ...hour })));
  const offBy = (months: Float64Array): number =>
    mean([...months].map((pct, at) => Math.abs(pct - inHours[at]!)));

  test('comes to what the months of the station say; the plain mean of hourly EMC is a point further off', () => {
    let from = 0;
    const plain = MONTH_DAYS.map((days) => {
      const month = hourly.slice(from, from + days * 24);
      from += days * 24;
      return mean(month.map(({ emc }) => emc));
    });
    const offPct = offBy(inMonths(emcOfYear(air).monthlyEmcPct));
    // Asheville is the furthest off of 12 stations; the average is 0.5.
    expect(offPct).toBeLessThan(1.3);
    expect(offBy(inMonths(plain))).toBeGreaterThan(offPct + 1);
  });
});
