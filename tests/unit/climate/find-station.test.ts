import { describe, expect, test } from 'vitest';
import seeds from '../../../seeds/weather-stations.json' with { type: 'json' };
import { findStations } from '../../../shared-core/wood/climate/find-station.ts';
import { stationListOf } from '../../../shared-core/wood/climate/station.ts';

const list = stationListOf(seeds);
const found = (text: string) => {
  const { years, ...rest } = findStations(text, list);
  return { names: years.map(({ station: { name, state } }) => `${name}, ${state}`), ...rest };
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
    ['winston-salem', 'Winston-Salem Reynolds, NC'],
    ["Coeur d'Alene", "Coeur d'Alene, ID"],
    ['coeur dalene', "Coeur d'Alene, ID"],
    ['mcalester', 'McAlester, OK'],
    ['Columbus, Ohio', 'Port Columbus, OH'],
    ['santa fe', 'Santa Fe County, NM'],
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

describe('A town without a station', () => {
  test('lists all stations of the state that is named with it, none of them meant', () => {
    const { names, ...rest } = found('Athens, Ohio');
    expect(names).toHaveLength(13);
    expect(names).toContain('Zanesville, OH');
    expect(names.every((name) => name.endsWith(', OH'))).toBe(true);
    expect(rest).toEqual({ more: 0, isClear: false, onlyState: 'Ohio' });
    expect(found('athens oh').names).toEqual(names);
  });

  test('is in the state whose whole name is typed', () => {
    expect(found('Pocahontas, West Virginia').onlyState).toBe('West Virginia');
  });

  test('without a state lists none', () => {
    expect(found('Pocahontas')).toMatchObject({ names: [], onlyState: null });
  });
});

test('no state has more stations than are listed', () => {
  for (const state of Object.values(list.states)) expect(found(state).more).toBe(0);
  expect(found('s').more).toBeGreaterThan(0);
});

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
  expect(found(text)).toEqual({ names: [], more: 0, isClear: false, onlyState: null });
});
