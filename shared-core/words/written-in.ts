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
 * Where dates and numbers are written as a person of this locale reads them. Intl knows nothing of English in Mexico,
 * and writes it as in the United States; it does know how Mexico writes, by the language that most people speak there.
 */
export function writtenIn(locale: string): string {
  const known = found.get(locale) ?? wayFor(locale);
  found.set(locale, known);
  return known;
}

function wayFor(locale: string): string {
  const { language, region } = new Intl.Locale(locale);
  if (language !== 'en' || region === undefined || regionIn(locale) === region) return locale;
  // Without its script: Intl knows "es-MX", and of "es-Latn-MX" only Spanish.
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

/** On which day the calendar of a date field begins; not every browser knows. */
function weekOf(locale: string): string {
  const known: Intl.Locale & { getWeekInfo?: () => { firstDay: number } } = new Intl.Locale(locale);
  const firstDay = known.getWeekInfo?.().firstDay;
  return firstDay === undefined ? '' : `-fw-${WEEKDAYS[firstDay % 7]}`;
}
