import { type Catalog, english } from './en/index.ts';

/** Those with a sentence for every code, by their BCP 47 tags. */
export const languages = ['en', 'de'] as const;
export type Language = (typeof languages)[number];

/**
 * The language of a locale; null where it has no catalog.
 * @example languageOf('de-AT') // "de"
 */
export function languageOf(locale: string): Language | null {
  const [tag] = locale.split(/[-_]/);
  return languages.find((language) => language === tag?.toLowerCase()) ?? null;
}

/** The sentences of a language. All but the English ones are loaded when they are first asked for. */
export async function catalogOf(language: Language): Promise<Catalog> {
  return language === 'de' ? (await import('./de/index.ts')).german : english;
}

/** The sentences in which something for a locale is written: English ones where its language has none. */
export const catalogFor = (locale: string): Promise<Catalog> => catalogOf(languageOf(locale) ?? 'en');
