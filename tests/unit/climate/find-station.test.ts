import { describe, expect, test } from 'vitest';
import seeds from '../../../seeds/weather-stations.json' with { type: 'json' };
import { findStations } from '../../../shared-core/wood/climate/find-station.ts';
import { stationListOf } from '../../../shared-core/wood/climate/station.ts';

const list = stationListOf(seeds);
const found = (text: string) => {
  const { years, isClear } = findStations(text, list);
  return { names: years.map(({ station: { name, state } }) => `${name}, ${state}`), isClear };
};

describe('A weather station is found', () => {
  test.each([
    ['Asheville', 'Asheville, NC'],
    ['asheville nc', 'Asheville, NC'],
    ['Asheville, NC', 'Asheville, NC'],
    ['Asheville, North Carolina', 'Asheville, NC'],
    ['  ASHEV ', 'Asheville, NC'],
    ['springfield mo', 'Springfield, MO'],
    ['nashville', 'Nashville, TN'],
  ])('by "%s"', (text, name) => {
    const { names, isClear } = found(text);
    expect(names[0]).toBe(name);
    expect(isClear).toBe(true);
  });

  // Asheville's airport is at 35.43 N, 82.53 W; TMY3, NREL/TP-581-43156.
  test.each(['35.6, -82.5', '35.6 -82.5', '35.6 N, 82.5 W', '35,6; −82,5', '35.6°N 82.5°W'])(
    'as the nearest to %s',
    (text) => {
      const { names, isClear } = found(text);
      expect(names[0]).toBe('Asheville, NC');
      expect(isClear).toBe(true);
    },
  );

  test('across the date line too', () => {
    expect(found('52, 179.5').names[0]).toMatch(/, AK$/);
  });
});

test.each(['NC', 'North Carolina', 'north car'])(
  '"%s" lists stations of that state, none of them meant',
  (text) => {
    const { names, isClear } = found(text);
    expect(names.length).toBeGreaterThan(5);
    expect(names.every((name) => name.endsWith(', NC'))).toBe(true);
    expect(isClear).toBe(false);
  },
);

test('a name that other stations of the same state begin with is that one', () => {
  expect(found('Anchorage')).toMatchObject({ isClear: true });
  expect(found('Anchorage').names).toEqual([
    'Anchorage, AK',
    'Anchorage Elmendorf, AK',
    'Anchorage Merrill Field, AK',
  ]);
});

test('a name in several states is not decided', () => {
  const { names, isClear } = found('Springfield');
  expect(names).toEqual(expect.arrayContaining(['Springfield, MO', 'Springfield Capital, IL']));
  expect(isClear).toBe(false);
});

// Zurich has no station of the list within 300 km, nor has the middle of the Atlantic.
test.each(['zzzz', '', '95, 10', '35.6', '47.4, 8.5', '35, -50'])('"%s" finds none', (text) => {
  expect(found(text)).toEqual({ names: [], isClear: false });
});
