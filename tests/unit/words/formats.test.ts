import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';

const formatsFor = (units: 'metric' | 'imperial', locale = 'en-US', today: string | null = '2027-05-01') =>
  createWords({ catalog: english, locale, timeZone: 'America/Chicago', units, today }).formats;
const metric = formatsFor('metric');
const imperial = formatsFor('imperial');

/** Our own rule 5: no space before %, an en dash in ranges, differences in points. */
describe('moisture contents', () => {
  test.each([
    [13.7, '13.7%'],
    [13, '13.0%'],
    [13.65, '13.7%'],
    [-0.01, '0.0%'],
    [-2, '−2.0%'],
  ])('%f %% MC is "%s"', (pct, text) => expect(metric.mc(pct)).toBe(text));

  test.each([
    [6, 8, '6–8%'],
    [6.5, 8, '6.5–8%'],
    [0, 20, '20% or less'],
  ])('a target of %f to %f is "%s"', (minPct, maxPct, text) => {
    expect(metric.mcRange({ minPct, maxPct })).toBe(text);
  });

  test('an interval has a tenth at both ends', () => {
    expect(metric.mcInterval({ minPct: 11.55, maxPct: 13 })).toBe('11.6–13.0%');
    expect(metric.mcInterval({ minPct: 9, maxPct: 9.3 })).toBe('9.0–9.3%');
    expect(metric.mcInterval({ minPct: 9.09, maxPct: 9.11 })).toBe('9.1%');
  });

  test('a difference is in points', () => expect(metric.points(4.2)).toBe('4.2 points'));
  test('an error has its sign', () => {
    expect([metric.signedPoints(0.24), metric.signedPoints(-0.24)]).toEqual(['+0.2 points', '−0.2 points']);
  });
  test('chances and humidities are whole', () => expect(metric.wholePercent(64.6)).toBe('65%'));
  test('a certainty keeps the tenth that it has', () => {
    expect([90, 99.9].map(metric.percent)).toEqual(['90%', '99.9%']);
  });
});

describe('a raw value is shown as it was typed or sent', () => {
  test.each([
    [1.45, '1.45'],
    [7, '7'],
    [0.125, '0.125'],
    [123456.75, '123456.75'],
  ])('%f is "%s"', (value, text) => expect(metric.raw(value)).toBe(text));

  test('with the decimal mark of the region', () =>
    expect(formatsFor('metric', 'en-DE').raw(1.45)).toBe('1,45'));
  test('as a percentage', () => expect(metric.rawPercent(14.25)).toBe('14.25%'));
  test.each([
    [820, '0.00082 MΩ'],
    [500_000, '0.5 MΩ'],
    [1_234_500, '1.2345 MΩ'],
    [350e6, '350 MΩ'],
    [55_000_000_010, '55,000.00001 MΩ'],
  ])('%f as a resistance, in megohms as it is typed', (ohm, text) => expect(metric.rawOhms(ohm)).toBe(text));

  test('every value comes back whole', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (thousandths) => {
        expect(Number(metric.raw(thousandths / 1000))).toBe(thousandths / 1000);
      }),
    );
  });
});

describe('lengths', () => {
  // 1 in is 25.4 mm, exact by definition (international inch, 1959).
  test.each([
    [4.7625, '3/16 in'],
    [27, '1 1/16 in'],
    [19.05, '3/4 in'],
    [25.4, '1 in'],
    [25, '1 in'],
    [0, '0 in'],
    [0.4, 'under 1/16 in'],
    [152.4, '6 in'],
  ])('%f mm is "%s" on a tape', (mm, text) => expect(imperial.shortLength(mm)).toBe(text));

  test.each([
    [27, '27 mm'],
    [27.4, '27 mm'],
    [9.5, '9.5 mm'],
    [9.6, '9.5 mm'],
    [0.1, 'under 0.5 mm'],
    [0, '0 mm'],
  ])('%f mm is "%s"', (mm, text) => expect(metric.shortLength(mm)).toBe(text));

  test('inches are spelled out in German, where "in" is a word of the sentence', () => {
    const german = formatsFor('imperial', 'de-DE');
    expect([german.shortLength(27), german.longLength(2400)]).toEqual(['1 1/16 Zoll', '7 Fuß 10 Zoll']);
  });

  test.each([
    [600, '60 cm', '24 in'],
    [996, '1.0 m', '3 ft 3 in'],
    [2400, '2.4 m', '7 ft 10 in'],
    [3048, '3.0 m', '10 ft'],
    [914.4, '91 cm', '3 ft'],
  ])('%f mm along a board is "%s" or "%s"', (mm, inMetric, inImperial) => {
    expect([metric.longLength(mm), imperial.longLength(mm)]).toEqual([inMetric, inImperial]);
  });

  test.each([
    [-3.2, '−3.2 mm', '−1/8 in'],
    [3.2, '+3.2 mm', '+1/8 in'],
    [0, '0.0 mm', '0 in'],
    [-0.2, '−0.2 mm', 'under 1/16 in'],
  ])('a change of %f mm is "%s" or "%s"', (mm, inMetric, inImperial) => {
    expect([metric.lengthChange(mm), imperial.lengthChange(mm)]).toEqual([inMetric, inImperial]);
  });

  test('a thickness chosen in quarters stays in quarters', () => {
    expect(metric.thickness({ thicknessMm: 50.8, quarters: 8 })).toBe('8/4');
    expect(imperial.thickness({ thicknessMm: 50.8, quarters: null })).toBe('2 in');
  });

  test('a tape is read to within half of its finest mark', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 900, noNaN: true }), (mm) => {
        const parts = imperial.shortLength(mm).replace(' in', '').split(' ');
        const inches = parts.reduce((sum, part) => {
          const [over = 0, under = 1] = part.split('/').map(Number);
          return sum + over / under;
        }, 0);
        expect(Math.abs(inches - mm / 25.4)).toBeLessThanOrEqual(1 / 32 + 1e-9);
      }),
    );
  });
});

describe('temperatures, to whole degrees', () => {
  // °F = °C × 9/5 + 32, exact by definition. The unit as CLDR writes it: "64°F" in en-US, "64 °F" in en-CA.
  test.each([
    [17.6, '18°C', '64°F'],
    [-18, '−18°C', '0°F'],
    [-0.2, '0°C', '32°F'],
  ])('%f °C', (tempC, inMetric, inImperial) => {
    expect([metric.temperature(tempC), imperial.temperature(tempC)]).toEqual([inMetric, inImperial]);
  });
  test('a difference in temperature is scaled and not shifted', () => {
    expect([metric.temperatureStep(10), imperial.temperatureStep(10)]).toEqual(['10°C', '18°F']);
  });
});

// 1 lb is 0.45359237 kg, exact by definition (international avoirdupois pound, 1959).
describe('weights and volumes', () => {
  test.each([
    [12.4, '12.4 kg', '27.3 lb'],
    [0.835, '0.835 kg', '1.84 lb'],
    [250, '250 kg', '551 lb'],
  ])('%f kg', (kg, inMetric, inImperial) => {
    expect([metric.weight(kg), imperial.weight(kg)]).toEqual([inMetric, inImperial]);
  });
  // Laboratory balances show grams in America too (common practice, no source).
  test('on a balance', () => {
    expect([metric.smallWeight(38.42), imperial.smallWeight(38.42)]).toEqual(['38.42 g', '38.42 g']);
    expect(metric.smallWeight(0.013372)).toBe('0.01337 g');
    // By the steps of the balance, all weights have the same decimals.
    expect([57.24, 57.2, 57].map((grams) => metric.smallWeight(grams, 0.01))).toEqual([
      '57.24 g',
      '57.20 g',
      '57.00 g',
    ]);
    expect(metric.smallWeight(57.2, 0.5)).toBe('57.2 g');
  });
  // A board foot is 144 cubic inches, by its definition.
  test('a volume', () => {
    expect([metric.volume(0.235974), imperial.volume(0.235974)]).toEqual(['0.236 m³', '100 board feet']);
    expect(metric.volume(0.01258)).toBe('0.0126 m³');
    expect(imperial.boardFeet(1)).toBe('1 board foot');
  });
});

describe('days and times', () => {
  test('a day shows its year where it is another one', () => {
    expect(metric.day('2027-05-12')).toBe('May 12');
    expect(metric.day('2028-05-12')).toBe('May 12, 2028');
    expect(metric.day('2027-05-12', 'year')).toBe('May 12, 2027');
    expect(formatsFor('metric', 'en-US', null).day('2027-05-12')).toBe('May 12, 2027');
  });
  test('as the region writes it', () =>
    expect(formatsFor('metric', 'en-GB').day('2028-05-12')).toBe('12 May 2028'));
  test('an instant falls on a day of the time zone', () => {
    expect(metric.day('2027-05-12T03:00:00Z')).toBe('May 11');
    expect(metric.localDay('2027-05-12T03:00:00Z')).toBe('2027-05-11');
  });
  test('a range', () => {
    expect(metric.dayRange({ from: '2027-04-20', to: '2027-06-15' })).toBe('Apr 20 – Jun 15');
    expect(metric.dayRange({ from: '2027-11-20', to: '2028-02-15' })).toBe('Nov 20, 2027 – Feb 15, 2028');
  });
  test.each([
    ['2027-05-12', '2027-04-20', '2027-06-15', 'May 12 (Apr 20 – Jun 15)'],
    ['2027-09-10', '2027-07-03', '2028-05-20', 'Sep 2027 (Jul 2027 – May 2028)'],
    ['2027-05-12', '2027-05-12', '2027-05-12', 'May 12'],
    ['2027-09-10', '2027-07-03', null, 'Sep 2027. Unlikely before Jul 2027; it may take over two years'],
    ['2027-05-12', '2027-05-02', null, 'May 2027; it may take over two years'],
  ])('a likely day of %s, from %s to %s, is "%s"', (likely, from, to, text) => {
    expect(metric.when({ likely, from, to })).toBe(text);
  });
  test('a time', () => {
    expect(metric.dateTime('2027-05-12T19:05:00Z')).toBe('May 12, 2:05 PM');
    expect(metric.time('2027-05-12T19:05:00Z')).toBe('2:05 PM');
    expect(formatsFor('metric', 'en-GB').time('2027-05-12T19:05:00Z')).toBe('14:05');
  });
  test('months', () => {
    expect([1, 12].map((month) => metric.month(month))).toEqual(['January', 'December']);
    expect(metric.month(4, 'short')).toBe('Apr');
    expect(metric.monthOfYear('2028-05-31')).toBe('May 2028');
  });
  test.each([
    ['2027-05-01', 'today'],
    ['2027-04-30', 'yesterday'],
    ['2027-04-19', '12 days ago'],
    ['2027-01-01', '4 months ago'],
    ['2024-05-01', '3 years ago'],
    ['2027-05-02', 'today'],
  ])('%s was %s', (isoDay, text) => expect(metric.ago(isoDay)).toBe(text));
});

describe('numbers', () => {
  test('with the marks of the region', () => {
    expect(metric.number(1234.5)).toBe('1,234.5');
    expect(formatsFor('metric', 'en-DE').number(1234.5)).toBe('1.234,5');
    expect(metric.list(['a', 'b', 'c'])).toBe('a, b, and c');
  });
  test.each([
    [820, '820 Ω'],
    [1_240_000, '1.24 MΩ'],
    [5.5e10, '55 GΩ'],
  ])('%f ohms', (ohm, text) => expect(metric.ohms(ohm)).toBe(text));
});

test('in inch mode nothing metric remains, but the grams of a balance', () => {
  const { mc, shortLength, longLength, lengthChange, temperature, temperatureStep, weight, volume } =
    imperial;
  fc.assert(
    fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (value) => {
      const all = [mc, lengthChange, temperature, temperatureStep, weight].map((each) => each(value));
      const sizes = [shortLength, longLength, volume].map((each) => each(Math.abs(value)));
      expect([...all, ...sizes].join(' ')).not.toMatch(/mm|cm|m³|°C|\d m\b|kg|\d g\b/);
    }),
  );
});
