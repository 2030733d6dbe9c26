import { useMemo } from 'react';
import type { DisplayUnits } from '../shared-core/units/length.ts';
import { type Catalog, english } from '../shared-core/words/en/index.ts';
import { pseudoOf } from '../shared-core/words/pseudo.ts';
import { createWords, type Say, type Words } from '../shared-core/words/words.ts';
import { onceATurn } from './data/once-a-turn.ts';
import { region } from './region.ts';
import { useLanguage } from './stores/language.ts';
import { unitsNow, useUnits } from './stores/settings.ts';
import { dayOf } from './ui/days.ts';
import { unbroken } from './unbroken.ts';

/** `?words=pseudo` shows the language that nobody speaks, for the browser tests. */
const isPseudo = new URLSearchParams(location.search).get('words') === 'pseudo';
const pseudo = isPseudo ? pseudoOf(english) : null;

/** The sentences of the language on screen. */
const useCatalog = (): Catalog => {
  const catalog = useLanguage((shown) => shown.catalog);
  return pseudo ?? catalog;
};
const catalogNow = (): Catalog => pseudo ?? useLanguage.getState().catalog;

/** Texts in a window wrap to its width; those of a label are drawn line by line. */
const inWindow = ({ say, formats }: Words): Words => ({
  say: ((...asked: Parameters<Say>) => unbroken(say(...asked))) as Say,
  formats: {
    ...formats,
    mcRange: (range) => unbroken(formats.mcRange(range)),
    mcInterval: (interval) => unbroken(formats.mcInterval(interval)),
    shortLength: (mm) => unbroken(formats.shortLength(mm)),
    lengthChange: (mm) => unbroken(formats.lengthChange(mm)),
    thickness: (thickness) => unbroken(formats.thickness(thickness)),
  },
});

let made: { key: string; catalog: Catalog; words: Words } | null = null;

/** Those of what is printed: it is read years later, so every day has its year. */
export function usePaperWords(): Words {
  const units = useUnits();
  const catalog = useCatalog();
  const { locale, timeZone } = region();
  return useMemo(
    () => createWords({ catalog, locale, timeZone, units, today: null }),
    [catalog, locale, timeZone, units],
  );
}

const hereAndToday = onceATurn(() => ({ ...region(), today: dayOf(new Date()) }));

/** Made once for as long as it is the same person on the same day. */
function wordsFor(units: DisplayUnits, catalog: Catalog): Words {
  const display = { ...hereAndToday(), units };
  const key = Object.values(display).join(' ');
  if (made?.key !== key || made.catalog !== catalog) {
    made = { key, catalog, words: inWindow(createWords({ catalog, ...display })) };
  }
  return made.words;
}

/** The sentences and formats of the person at this window. */
export const useWords = (): Words => wordsFor(useUnits(), useCatalog());

/** Those for a voice, where no component is. */
export function spokenWordsNow(): Words {
  const display = { ...region(), units: unitsNow(), today: dayOf(new Date()), isSpoken: true };
  return createWords({ catalog: catalogNow(), ...display });
}

/** The same as on screen where no component is, as in stores. */
export const wordsNow = (): Words => wordsFor(unitsNow(), catalogNow());
