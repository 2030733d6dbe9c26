import { describe, expect, test } from 'vitest';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import { monthlyAirSchema, roughnessPct } from '../../../shared-core/wood/climate/monthly-air.ts';
import { monthsLater } from '../../../shared-core/wood/climate/regional-air.ts';
import { type HeatedRoom, roomYear } from '../../../shared-core/wood/climate/room-air.ts';

describe('The usual air of a room', () => {
  // Wood Handbook (FPL-GTR-282), Table 13-2, most of the United States: 8 % on average, pieces 6 to 10 % (from memory).
  test('that is heated in winter is 8 % on average, 6 % in winter and 10 % in summer', () => {
    const { monthlyEmcPct, driestEmcPct, driestMonth } = emcOfYear(roomYear('heated', 0));
    expect(driestEmcPct).toBeCloseTo(6, 6);
    expect(driestMonth).toBe(1);
    expect(monthlyEmcPct[6]).toBeCloseTo(10, 6);
    expect(monthlyEmcPct.reduce((sum, pct) => sum + pct, 0) / 12).toBeCloseTo(8, 6);
  });

  // Common practice, no source.
  test('is driest where it is heated most, and dampest where it is not cooled', () => {
    const year = (room: HeatedRoom) => emcOfYear(roomYear(room, 0)).monthlyEmcPct;
    expect(year('part-heated')[0]).toBeGreaterThan(year('heated')[0]!);
    expect(year('heated')[6]).toBeGreaterThan(year('conditioned')[6]!);
  });

  test.each<HeatedRoom>(['part-heated', 'heated', 'conditioned'])(
    '%s: its humidity gives its EMC, and it is rough',
    (room) => {
      const air = monthlyAirSchema.parse(roomYear(room, 0));
      // Eq. 4-5 of the Wood Handbook.
      for (const month of air) expect(emcPct(month.tempC, month.rh)).toBeCloseTo(month.emcPct!, 6);
      expect(roughnessPct(air)).toBeGreaterThan(1);
    },
  );

  test('is driest in July where July is winter', () => {
    expect(emcOfYear(roomYear('heated', monthsLater('Australia/Hobart'))).driestMonth).toBe(7);
    expect(emcOfYear(roomYear('heated', monthsLater('America/New_York'))).driestMonth).toBe(1);
  });
});
