import type { Region } from '../shared-core/contract/region.ts';

/** Of the catalog. */
const language = 'en';

/**
 * The catalog's language as it is written in the person's region: "en-GB" in Britain, and "en-DE", English with
 * Germany's decimal comma and order of dates, in Germany. Their own "de-DE" would put German months into English
 * sentences.
 */
function locale(): string {
  return `${language}-${regionOf(navigator.language) ?? 'US'}`;
}

/** Undefined for what is no BCP 47 tag: some systems give "en-US@posix". */
function regionOf(tag: string): string | undefined {
  try {
    return new Intl.Locale(tag).maximize().region;
  } catch {
    return undefined;
  }
}

let made: { key: string; region: Region } | null = null;

/**
 * Where the person at this window is. Every part on screen asks: the name of the time zone, which takes long to find
 * out, is asked for again once the language or an hour of this year is another.
 */
export function region(): Region {
  const year = new Date().getFullYear();
  const offsets = [new Date(), new Date(year, 0), new Date(year, 6)].map((date) => date.getTimezoneOffset());
  const key = [navigator.language, ...offsets].join(' ');
  if (made?.key !== key) {
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    made = { key, region: { locale: locale(), timeZone } };
  }
  return made.region;
}
