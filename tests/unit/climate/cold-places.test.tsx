// @vitest-environment jsdom
import '../renderer/ui/drawing-room.ts';
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { YearChart } from '../../../renderer/features/places/YearChart.tsx';
import stationSeeds from '../../../seeds/weather-stations.json' with { type: 'json' };
import { newPlaceSchema } from '../../../shared-core/contract/yard.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { airFromOutdoors } from '../../../shared-core/wood/climate/air-from-outdoors.ts';
import { stationListOf } from '../../../shared-core/wood/climate/station.ts';
import { forecastBoard, forecastInputSchema } from '../../../shared-core/wood/drying/forecast.ts';
import { worked } from '../worked.ts';

// TMY3: Fort Yukon and its like have months below -20 °C; the coldest of all stations.
const { station, air } = stationListOf(stationSeeds).years.toSorted(
  (a, b) => coldest(a.air) - coldest(b.air),
)[0]!;
function coldest(months: readonly { tempC: number }[]): number {
  return Math.min(...months.map(({ tempC }) => tempC));
}
afterEach(cleanup);

describe(`A place in the coldest air of the list, in ${station.state}`, () => {
  test('has a month below -20 °C, and can be saved', () => {
    expect(coldest(air)).toBeLessThan(-20);
    expect(station.state).toBe('AK');
    newPlaceSchema.parse({ name: 'Yard', kind: 'outdoors', air, airSource: { kind: 'station', station } });
  });

  test('is drawn', () => {
    render(<YearChart placeName="Yard" air={air} />);
    expect(screen.getByRole('img', { name: 'EMC at Yard, by month' })).toBeTruthy();
  });

  test('has a forecast: a board sawn in November hardly dries until spring, and does in summer', () => {
    const sawn = Date.UTC(2025, 10, 10);
    const input = forecastInputSchema.parse({
      nowMs: sawn,
      board: {
        thicknessMm: 28,
        basicSpecificGravity: 0.37,
        start: { atMs: sawn, mcPct: 60, logSd: 0.1, shellRatio: 1 },
        stays: [{ fromMs: sawn, air }],
      },
      readings: [],
      siblings: [],
      endUse: { minPct: 12, maxPct: 15, maxShellCorePct: 3 },
      elsewhere: [{ placeId: 2, air: airFromOutdoors('heated', air) }],
      placeId: 1,
      horizonDays: 365,
    });
    const { band } = worked(forecastBoard(input)).places[0]!;
    const medianAt = (day: number): number =>
      band.average[band.atMs.findIndex((ms) => ms >= sawn + day * DAY_MS)]?.median ?? Number.NaN;
    expect(medianAt(90)).toBeGreaterThan(30);
    expect(medianAt(270)).toBeLessThan(25);
  });
});
