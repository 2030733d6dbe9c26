import { describe, expect, test } from 'vitest';
import {
  draftOfPlace,
  emptyPlaceDraft,
  monthsFromText,
  placeProblems,
  yearOf,
} from '../../../../renderer/features/places/place-draft.ts';

const twelve = <T>(make: (month: number) => T): T[] => Array.from({ length: 12 }, (_, month) => make(month));

describe('Twelve months pasted from a spreadsheet', () => {
  const months = twelve((month) => ({ temp: month - 4, rhPct: 60.5 + month }));

  test('as twelve lines of temperature and humidity', () => {
    const text = months.map(({ temp, rhPct }) => `${temp}\t${rhPct}`).join('\r\n');
    expect(monthsFromText(`${text}\n`)).toEqual(months);
  });

  test('with decimal commas and units', () => {
    const text = months.map(({ temp, rhPct }) => `${temp}°C; ${String(rhPct).replace('.', ',')}%`).join('\n');
    expect(monthsFromText(text)).toEqual(months);
  });

  test('as a line of temperatures and a line of humidities', () => {
    const text = [months.map(({ temp }) => temp), months.map(({ rhPct }) => rhPct)]
      .map((row) => row.join('\t'))
      .join('\n');
    expect(monthsFromText(text)).toEqual(months);
  });

  test.each(['', '12', '1\t2\n3\t4', 'a\tb', twelve(() => '1').join('\n')])(
    'anything else goes to the field as it is: %j',
    (text) => {
      expect(monthsFromText(text)).toBeNull();
    },
  );
});

describe('A place that is being described', () => {
  test('in Fahrenheit is saved in Celsius, its humidity as a fraction', () => {
    const draft = { ...emptyPlaceDraft, name: 'Shed', months: twelve(() => ({ temp: 68, rhPct: 45 })) };
    // 68 °F is 20 °C by definition of the scale.
    expect(yearOf(draft, 'imperial')).toEqual(twelve(() => ({ tempC: 20, rh: 0.45 })));
  });

  test('comes back as it was saved', () => {
    const air = twelve((month) => ({ tempC: month - 3, rh: (50 + month) / 100 }));
    const draft = draftOfPlace({ name: 'Shed', kind: 'open-shed', air, airSource: null }, 'metric');
    expect(draft.sameAllYear).toBe(false);
    expect(yearOf(draft, 'metric')).toEqual(air);
  });

  test('with the same air all year needs one pair only', () => {
    const months = twelve((month) => (month === 0 ? { temp: 21, rhPct: 40 } : { temp: null, rhPct: null }));
    const draft = { ...emptyPlaceDraft, name: 'Shop', sameAllYear: true, months };
    expect(placeProblems(draft, 'metric')).toEqual({ name: null, air: null, wrongMonth: null });
    expect(yearOf(draft, 'metric')).toEqual(twelve(() => ({ tempC: 21, rh: 0.4 })));
  });

  test('says which month is wrong and how', () => {
    const months = twelve((month) => ({ temp: 10, rhPct: month === 4 ? 120 : 60 }));
    const problems = placeProblems({ ...emptyPlaceDraft, name: ' ', months }, 'metric');
    expect(problems).toEqual({
      name: { code: 'places.name-missing' },
      air: { code: 'places.humidity-outside', facts: { driestRhPct: 0, dampestRhPct: 99 } },
      wrongMonth: 4,
    });
  });
});
