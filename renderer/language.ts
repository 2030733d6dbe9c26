import { type Language, languageOf } from '../shared-core/words/languages.ts';
import { showLanguage } from './stores/language.ts';
import { attempt } from './stores/notices.ts';
import { useSettings } from './stores/settings.ts';

/** The first of the computer's languages that Pintally speaks. */
const languageHere = (): Language =>
  navigator.languages.map(languageOf).find((language) => language !== null) ?? 'en';

const show = (): Promise<unknown> =>
  attempt(showLanguage(useSettings.getState().settings.language ?? languageHere()));

/**
 * Shows the window in the person's language, from now on: the one that was chosen, or the computer's own.
 * @returns  once the first is there; English stays where its sentences cannot be loaded
 */
export function followLanguage(): Promise<unknown> {
  useSettings.subscribe(({ settings }, before) => {
    if (settings.language !== before.settings.language) void show();
  });
  addEventListener('languagechange', () => void show());
  return show();
}
