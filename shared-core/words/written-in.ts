/** Ways to write English: month or day first, with a decimal point or comma. */
const ENGLISH = ['en-US', 'en-GB', 'en-NL'];
const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];

interface Way {
  isDayFirst: boolean;
  decimalMark: string;
}

function wayOf(locale: string): Way {
  const common = { numberingSystem: 'latn' } as const;
  const parts = new Intl.DateTimeFormat(locale, {
    ...common,
    calendar: 'gregory',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
  })
    .formatToParts(0)
    .map(({ type }) => type);
  const number = new Intl.NumberFormat(locale, common).formatToParts(1.5);
  return {
    isDayFirst: parts.indexOf('day') < parts.indexOf('month'),
    decimalMark: number.find(({ type }) => type === 'decimal')!.value,
  };
}

const found = new Map<string, string>();

/**
 * The locale to write dates and numbers in for a person with this locale. Both are BCP 47 tags. For English in Mexico,
 * Intl falls back to the way the United States writes. It does know how Mexico writes Spanish, so we take an English
 * that is written the same way.
 *
 * @example writtenIn('en-MX') // 'en-GB-u-fw-sun-hc-h12', British with Mexico's first day of the week and clock
 */
export function writtenIn(locale: string): string {
  const known = found.get(locale) ?? wayFor(locale);
  found.set(locale, known);
  return known;
}

function wayFor(locale: string): string {
  const { language, region } = new Intl.Locale(locale);
  if (language !== 'en' || region === undefined || regionIn(locale) === region) return locale;
  // Without the script: Intl knows "es-MX", but of "es-Latn-MX" only Spanish.
  const own = `${new Intl.Locale(`und-${region}`).maximize().language}-${region}`;
  if (Intl.DateTimeFormat.supportedLocalesOf(own).length === 0) return locale;
  const wanted = wayOf(own);
  const like = ENGLISH.find((each) => {
    const { isDayFirst, decimalMark } = wayOf(each);
    return isDayFirst === wanted.isDayFirst && decimalMark === wanted.decimalMark;
  });
  const { hourCycle } = new Intl.DateTimeFormat(own, { hour: 'numeric' }).resolvedOptions();
  return like ? `${like}-u${weekOf(own)}-hc-${hourCycle}` : locale;
}

/** The region whose dates Intl has for a locale; undefined where it has only those of the language. */
const regionIn = (locale: string): string | undefined =>
  new Intl.Locale(new Intl.DateTimeFormat(locale).resolvedOptions().locale).region;

/** The first day of the week in a date field's calendar, as part of a locale; not every browser knows it. */
function weekOf(locale: string): string {
  const known: Intl.Locale & { getWeekInfo?: () => { firstDay: number } } = new Intl.Locale(locale);
  const firstDay = known.getWeekInfo?.().firstDay;
  return firstDay === undefined ? '' : `-fw-${WEEKDAYS[firstDay % 7]}`;
}
