import type { Region } from '../shared-core/contract/region.ts';
import { languageNow } from './stores/language.ts';

/**
 * The language on screen as it is written in the person's region: "de-AT" in Austria, and "en-FR", English with
 * France's decimal comma and order of dates, in France. Their own "fr-FR" would put French months into English
 * sentences.
 */
function locale(): string {
  return `${languageNow()}-${regionOf(navigator.language) ?? 'US'}`;
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
  const key = [languageNow(), navigator.language, ...offsets].join(' ');
  if (made?.key !== key) {
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    made = { key, region: { locale: locale(), timeZone } };
  }
  return made.region;
}
