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

/** Where the person at this window is. */
export const region = (): Region => ({
  locale: locale(),
  timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
});
