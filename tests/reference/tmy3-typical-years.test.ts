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
import { dryingGrid } from '../../shared-core/wood/drying/model/drying-grid.ts';
import { woodDryingLaw } from '../../shared-core/wood/drying/model/drying-law.ts';
import { simulateDrying } from '../../shared-core/wood/drying/model/drying-model.ts';
import { LawTables } from '../../shared-core/wood/drying/model/law-tables.ts';
import { parabolicStart } from '../../shared-core/wood/drying/model/parabolic-start.ts';
import { mean } from '../../shared-core/wood/maths/mean.ts';
import { epwText, MONTH_DAYS } from './epw-text.ts';

const { years, states } = stationListOf(seeds);
const hours = readFileSync(join(import.meta.dirname, 'tmy3-asheville-hours.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number) as [tempC: number, rhPct: number]);
const yearOf = (wmo: string) => years.find(({ station }) => station.wmo === wmo)!;

/** The months of a typical year itself, as the source has them. */
function sourceMonths(wmo: string): MonthlyAir {
  const line = seeds.stations.find((each) => each.startsWith(`${wmo}|`))!;
  const [tempsC, rhsPct, emcsPct] = line
    .split('|')
    .slice(6, 9)
    .map((text) => text.split(' ').map(Number)) as [number[], number[], number[]];
  return tempsC.map((tempC, month) => ({ tempC, rh: rhsPct[month]! / 100, emcPct: emcsPct[month]! }));
}

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

  // The source cuts names after 19 or 29 letters and writes how a station measures: AWOS, AMOS, SURFRAD. By eye, of the list.
  test('no name ends within a word, has a mark of the source, or says its town twice', () => {
    for (const { name } of years.map(({ station }) => station)) {
      expect(name).not.toMatch(/(awos|amos|surfrad|nrel)\b/i);
      expect(name).not.toMatch(
        / (A|I|G|H|P|F|Ap|Ai|Ar|Rg|Rgn|Rgnl|Regl|Fd|Fl|Fie|Fiel|Cr|Wb|Wfo|Muni|Intl|Arpt)$/,
      );
      expect(name).not.toMatch(/^(\S+) .+ \1$|^(\S{6,}) (?!\2\b)\S*\2/i);
    }
  });

  // January and July: °C, % RH, % EMC that wood follows. Their hours give it 15.2, 14.8, 9.1, 7.4, 15.8 and 14.2.
  test.each([
    ['723150', 'Asheville', 'NC', [1.4, 71, 15.4], [22.5, 77, 14.7], 4.04, 0.52],
    ['723650', 'Albuquerque', 'NM', [2.6, 53, 9.1], [25.6, 44, 7.4], 2.56, 0.63],
    ['727450', 'Duluth', 'MN', [-13, 72, 16], [17.8, 76, 14.3], 4.01, 0.46],
  ] as const)('%s is %s, %s', (wmo, name, state, january, july, sdPct, lag) => {
    expect(yearOf(wmo).station).toMatchObject({ name, state, days: { sdPct, lag } });
    const air = sourceMonths(wmo);
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

/**
 * TMY3 puts a typical year together from months of different years, chosen mostly by their sun (the manual, section 2). The
 * neighbors of a station mostly have other years, so their mean is nearer to the climate.
 */
describe('Months of a typical year, smoothed', () => {
  const zanesville = years.find(({ station: { name } }) => name === 'Zanesville')!;
  const driestMonth = (air: MonthlyAir): number => {
    const emcs = air.map(({ emcPct: emc = Number.NaN }) => emc);
    return emcs.indexOf(Math.min(...emcs)) + 1;
  };

  test('have no lone dry November in Zanesville, whose driest month is in spring, as in the rest of Ohio', () => {
    expect(driestMonth(sourceMonths(zanesville.station.wmo))).toBe(11);
    expect(driestMonth(zanesville.air)).toBe(3);
    expect(zanesville.air[10]!.emcPct).toBeCloseTo((17.9 + 2 * 12.2 + 15.5) / 4, 6);
    expect(zanesville.air[10]!.rh).toBeCloseTo((0.83 + 2 * 0.65 + 0.76) / 4, 6);
    const ohio = years
      .filter(({ station }) => station.state === 'OH')
      .map(({ station }) => sourceMonths(station.wmo));
    const mean12 = ohio[0]!.map((month, at) => ({
      ...month,
      emcPct: mean(ohio.map((air) => air[at]!.emcPct!)),
    }));
    expect([4, 5]).toContain(driestMonth(mean12));
  });

  test('have the mean of the year that the source has, and its temperatures', () => {
    for (const { station, air } of years) {
      const source = sourceMonths(station.wmo);
      expect(mean(air.map(({ emcPct: emc }) => emc!))).toBeCloseTo(
        mean(source.map(({ emcPct: emc }) => emc!)),
        6,
      );
      expect(air.map(({ tempC }) => tempC)).toEqual(source.map(({ tempC }) => tempC));
    }
  });

  test('are nearer to the neighbors’ mean than the source’s months are, at 19 of 20 stations', () => {
    const round = (latitude: number, longitude: number): number[] => {
      const [north, east] = [latitude, longitude].map((degrees) => (degrees * Math.PI) / 180) as [
        number,
        number,
      ];
      return [Math.cos(north) * Math.cos(east), Math.cos(north) * Math.sin(east), Math.sin(north)];
    };
    const all = years.map(({ station, air }) => ({
      station,
      at: round(station.latitude, station.longitude),
      smoothed: aroundMean(air),
      source: aroundMean(sourceMonths(station.wmo)),
    }));
    const isNear = (a: (typeof all)[number], b: (typeof all)[number]): boolean =>
      a !== b &&
      a.at.reduce((sum, value, axis) => sum + value * b.at[axis]!, 0) > Math.cos(150 / 6371) &&
      Math.abs(a.station.elevationM - b.station.elevationM) < 300;
    const offBy = all.flatMap((each) => {
      const near = all.filter((other) => isNear(each, other));
      if (near.length < 4) return [];
      const climate = each.source.map((_, month) => mean(near.map(({ source }) => source[month]!)));
      const off = (emcs: readonly number[]): number =>
        Math.sqrt(mean(emcs.map((emc, month) => (emc - climate[month]!) ** 2)));
      return [{ smoothed: off(each.smoothed), source: off(each.source) }];
    });
    expect(offBy.length).toBeGreaterThan(700);
    expect(offBy.filter(({ smoothed, source }) => smoothed < source).length).toBeGreaterThan(
      0.95 * offBy.length,
    );
    expect(mean(offBy.map(({ smoothed }) => smoothed))).toBeLessThan(
      0.75 * mean(offBy.map(({ source }) => source)),
    );
  });

  /** EMC of each month, less that of the year. */
  function aroundMean(air: MonthlyAir): number[] {
    const emcs = air.map(({ emcPct: emc = Number.NaN }) => emc);
    return emcs.map((emc) => emc - mean(emcs));
  }
});

describe('A 1 in board in the hours of Asheville', () => {
  const hourly = hours.map(([tempC, rhPct]) => ({ tempC, emc: emcPct(tempC, Math.min(0.99, rhPct / 100)) }));
  // These hours are one year: smoothed months are those of no year.
  const air = sourceMonths('723150');
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
    // Asheville is the furthest off of 12 stations: halfway it is less than half as far off as the mean of the hours' EMC is.
    expect(offPct).toBeLessThan(0.65);
    expect(offBy(inMonths(plain))).toBeGreaterThan(offPct + 1);
  });
});
