/** English in a region that Intl knows no English of, against what Intl (CLDR) knows of the region's own language. */
import { describe, expect, test } from 'vitest';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { writtenIn } from '../../../shared-core/words/written-in.ts';

const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
const names = new Intl.DisplayNames('en', { type: 'region', fallback: 'none' });
const regions = letters
  .flatMap((first) => letters.map((second) => first + second))
  .filter((region) => names.of(region) !== undefined);
const isKnown = (locale: string): boolean =>
  new Intl.DateTimeFormat(locale).resolvedOptions().locale === locale;
const ownOf = (region: string): string => `${new Intl.Locale(`und-${region}`).maximize().language}-${region}`;
const unknown = regions.filter((region) => !isKnown(`en-${region}`) && isKnown(ownOf(region)));

const typesOf = (parts: { type: string }[]): string => parts.map(({ type }) => type).join(' ');
const isDayFirst = (locale: string): boolean =>
  /day.*month/.test(
    typesOf(
      new Intl.DateTimeFormat(locale, {
        calendar: 'gregory',
        day: 'numeric',
        month: 'numeric',
        year: 'numeric',
      }).formatToParts(0),
    ),
  );
const has12Hours = (locale: string): boolean =>
  /dayPeriod/.test(typesOf(new Intl.DateTimeFormat(locale, { hour: 'numeric' }).formatToParts(0)));
/** TypeScript does not know it yet. */
const firstDayOf = (locale: string): unknown =>
  (new Intl.Locale(locale) as Intl.Locale & { getWeekInfo(): { firstDay: number } }).getWeekInfo().firstDay;

describe('A region without an English of its own', () => {
  test('is one of many', () => {
    expect(unknown.length).toBeGreaterThan(100);
  });

  // Year first with a decimal comma: no English is written so.
  test.each(unknown.filter((region) => writtenIn(`en-${region}`) !== `en-${region}`))(
    '%s has the order of dates, the clock and the week of its own language',
    (region) => {
      const written = writtenIn(`en-${region}`);
      expect(isDayFirst(written)).toBe(isDayFirst(ownOf(region)));
      expect(has12Hours(written)).toBe(has12Hours(ownOf(region)));
      expect(firstDayOf(written)).toBe(firstDayOf(ownOf(region)));
      const mark = (locale: string) =>
        new Intl.NumberFormat(locale, { numberingSystem: 'latn' })
          .formatToParts(1.5)
          .find(({ type }) => type === 'decimal')?.value;
      expect(mark(written)).toBe(mark(ownOf(region)));
    },
  );

  test('leaves hardly any region as it was', () => {
    expect(unknown.filter((region) => writtenIn(`en-${region}`) === `en-${region}`).length).toBeLessThan(5);
  });
});

test.each(['en-US', 'en-CA', 'en-FR', 'de-MX', 'en', 'de'])('%s stays as it is', (locale) => {
  expect(writtenIn(locale)).toBe(locale);
});

test.each([
  ['en-MX', '12 May 2028', '13.7%', '12 May 2028, 2:05 pm'],
  ['en-EG', '12 May 2028', '13.7%', '12 May 2028, 2:05 pm'],
  ['en-BR', '12 May 2028', '13,7%', '12 May 2028, 14:05'],
  ['en-CN', 'May 12, 2028', '13.7%', 'May 12, 2028, 14:05'],
])('a person in %s reads %s', (locale, day, mc, time) => {
  const { formats } = createWords({
    catalog: english,
    locale,
    timeZone: 'UTC',
    units: 'metric',
    today: null,
  });
  expect(formats.day('2028-05-12')).toBe(day);
  expect(formats.mc(13.7)).toBe(mc);
  expect(formats.dateTime('2028-05-12T14:05:00Z')).toBe(time);
});
