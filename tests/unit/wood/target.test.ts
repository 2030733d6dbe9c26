import { describe, expect, test } from 'vitest';
import { builtInEndUses } from '../../../shared-core/wood/species/catalogue.ts';
import { endUseForRoom, targetForRoom } from '../../../shared-core/wood/species/target.ts';

describe('the target that a room sets', () => {
  test('is what its air brings wood to, between its driest and its dampest time', () => {
    // Wood Handbook, Table 4-2, 70 °F: 6.2 at 30 %, 9.2 at 50 % (from memory).
    const { minPct, maxPct } = targetForRoom({ tempC: 21.1, driestRh: 0.3, dampestRh: 0.5 });
    expect(minPct).toBeCloseTo(6.2, 1);
    expect(maxPct).toBeCloseTo(9.2, 1);
  });

  test('is 2 % wide about its EMC in a room that never changes', () => {
    const { minPct, maxPct } = targetForRoom({ tempC: 21.1, driestRh: 0.4, dampestRh: 0.4 });
    expect(maxPct - minPct).toBeCloseTo(2, 10);
    // Table 4-2, 70 °F and 40 %: 7.7 (from memory).
    expect((minPct + maxPct) / 2).toBeCloseTo(7.7, 1);
  });

  test('never goes below nothing', () => {
    expect(targetForRoom({ tempC: 30, driestRh: 0, dampestRh: 0.01 }).minPct).toBe(0);
  });

  test('takes the place of a range in a use, and says so', () => {
    const furniture = builtInEndUses.find(({ id }) => id === 'furniture')!;
    const endUse = endUseForRoom(furniture, { tempC: 21.1, driestRh: 0.3, dampestRh: 0.5 }, 'metric');
    expect(endUse).toMatchObject({
      id: 'furniture',
      minPct: 6.2,
      maxPct: 9.2,
      maxShellCorePct: furniture.maxShellCorePct,
    });
    expect(endUse.note).toBe('Set by a room of 21 °C and 30 % to 50 % relative humidity.');
    const inFahrenheit = endUseForRoom(furniture, { tempC: 20, driestRh: 0.3, dampestRh: 0.5 }, 'imperial');
    expect(inFahrenheit.note).toBe('Set by a room of 68 °F and 30 % to 50 % relative humidity.');
  });

  test('is refused where the driest is damper than the dampest', () => {
    expect(() => targetForRoom({ tempC: 20, driestRh: 0.5, dampestRh: 0.4 })).toThrow(RangeError);
  });
});
