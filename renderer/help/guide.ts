import type { Chapter } from '../../shared-core/guide/chapter.ts';
import { partsOf } from '../../shared-core/guide/find.ts';
import ids from './guide/chapters.json';

interface ChapterModule {
  chapter: Chapter;
  pictures: Record<string, string>;
}

const modules = import.meta.glob<ChapterModule>('./guide/en/*.md', { eager: true });

/** A chapter of the guide with the addresses of its pictures. */
export interface GuideChapter extends ChapterModule {
  id: string;
}

/** The guide, in the order in which it is read. */
export const guide: readonly GuideChapter[] = ids.map((id) => ({ id, ...modules[`./guide/en/${id}.md`]! }));

export const parts = guide.flatMap(({ id, chapter }) => partsOf(id, chapter));
