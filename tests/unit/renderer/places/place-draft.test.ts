import { describe, expect, test } from 'vitest';
import {
  airDraftOf,
  emptyAirDraft,
  monthsFromText,
  ownYear,
} from '../../../../renderer/features/places/place-draft.ts';

const twelve = <T>(make: (month: number) => T): T[] => Array.from({ length: 12 }, (_, month) => make(month));

describe('Twelve months pasted from a spreadsheet', () => {
  const months = twelve((month) => ({ tempC: month - 4, rhPct: 60.5 + month }));

  test('as twelve lines of temperature and humidity', () => {
    const text = months.map(({ tempC, rhPct }) => `${tempC}\t${rhPct}`).join('\r\n');
    expect(monthsFromText(`${text}\n`, 'metric')).toEqual(months);
  });

  test('with decimal commas and units', () => {
    const text = months
      .map(({ tempC, rhPct }) => `${tempC}°C; ${String(rhPct).replace('.', ',')}%`)
      .join('\n');
    expect(monthsFromText(text, 'metric')).toEqual(months);
  });

  test('as a line of temperatures and a line of humidities', () => {
    const text = [months.map(({ tempC }) => tempC), months.map(({ rhPct }) => rhPct)]
      .map((row) => row.join('\t'))
      .join('\n');
    expect(monthsFromText(text, 'metric')).toEqual(months);
  });

  test('in Fahrenheit, where that is what is typed', () => {
    // 68 °F is 20 °C by definition of the scale.
    const text = twelve(() => '68 45').join('\n');
    expect(monthsFromText(text, 'imperial')).toEqual(twelve(() => ({ tempC: 20, rhPct: 45 })));
  });

  test.each(['', '12', '1\t2\n3\t4', 'a\tb', twelve(() => '1').join('\n')])(
    'anything else goes to the field as it is: %j',
    (text) => {
      expect(monthsFromText(text, 'metric')).toBeNull();
    },
  );
});

describe('The air of a place that is being described', () => {
  test('comes back as it was saved', () => {
    const air = twelve((month) => ({ tempC: month - 3.25, rh: (50 + month) / 100 }));
    const draft = airDraftOf({ air, airSource: null });
    expect(draft).toMatchObject({ way: 'own', sameAllYear: false });
    expect(ownYear(draft)).toEqual({ air });
  });

  test('that is the same all year needs one pair only', () => {
    const months = twelve((month) => (month === 0 ? { tempC: 21, rhPct: 40 } : { tempC: null, rhPct: null }));
    expect(ownYear({ ...emptyAirDraft, sameAllYear: true, months })).toEqual({
      air: twelve(() => ({ tempC: 21, rh: 0.4 })),
    });
  });

  test('says which month is wrong and how', () => {
    const months = twelve((month) => ({ tempC: 10, rhPct: month === 4 ? 120 : 60 }));
    expect(ownYear({ ...emptyAirDraft, months })).toEqual({
      problem: { code: 'places.humidity-outside', facts: { driestRhPct: 0, dampestRhPct: 99 } },
      wrongMonth: 4,
    });
  });

  test('of a region is a station that was not named', () => {
    const air = twelve(() => ({ tempC: 10, rh: 0.7, emcPct: 14, emcSdPct: 2 }));
    expect(airDraftOf({ air, airSource: { kind: 'region', stations: 314 } })).toMatchObject({
      way: 'station',
      station: '',
    });
  });
});
