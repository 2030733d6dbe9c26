import type { Chapter } from '../../shared-core/guide/chapter.ts';
import { type Part, partsOf } from '../../shared-core/guide/find.ts';
import { type Language, languages } from '../../shared-core/words/languages.ts';
import { useLanguage } from '../stores/language.ts';
import ids from './guide/chapters.json';

interface ChapterModule {
  chapter: Chapter;
  pictures: Record<string, string>;
}

/** A chapter of the guide with the addresses of its pictures. */
export interface GuideChapter extends ChapterModule {
  id: string;
}

interface Guide {
  /** In the order in which they are read. */
  chapters: readonly GuideChapter[];
  parts: readonly Part[];
}

const modules = import.meta.glob<ChapterModule>('./guide/*/*.md', { eager: true });

function guideIn(language: Language): Guide {
  const chapters = ids.map((id) => ({ id, ...modules[`./guide/${language}/${id}.md`]! }));
  return { chapters, parts: chapters.flatMap(({ id, chapter }) => partsOf(id, chapter)) };
}

const guides = Object.fromEntries(languages.map((language) => [language, guideIn(language)])) as Record<
  Language,
  Guide
>;

/** The guide in the language on screen. */
export const useGuide = (): Guide => guides[useLanguage(({ language }) => language)];
