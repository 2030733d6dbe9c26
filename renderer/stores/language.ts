import { create } from 'zustand';
import { type Catalog, english } from '../../shared-core/words/en/index.ts';
import { catalogOf, type Language } from '../../shared-core/words/languages.ts';

/** The language on screen, with its sentences. */
export const useLanguage = create<{ language: Language; catalog: Catalog }>()(() => ({
  language: 'en',
  catalog: english,
}));

export const languageNow = (): Language => useLanguage.getState().language;

/** The one asked for last stays, whichever comes last. */
let asked: Language = 'en';

/** Shows another language once its sentences are here. */
export async function showLanguage(language: Language): Promise<void> {
  asked = language;
  const catalog = await catalogOf(language);
  if (asked !== language) return;
  document.documentElement.lang = language;
  useLanguage.setState({ language, catalog });
}
