import { useState } from 'react';
import { useYard } from '../../stores/yard.ts';
import { blankPage, type PageDraft, pageDraftSchema } from './page-draft.ts';

/** What was typed of a page and not saved yet; a blank page where nothing was. */
export function readDraft(key: string): PageDraft {
  try {
    return pageDraftSchema.parse(JSON.parse(localStorage.getItem(key) ?? 'null'));
  } catch {
    return blankPage;
  }
}

/** Where the page of a stack of a yard is while it is typed. */
export const draftKey = (yard: string | null, stackId: number): string =>
  `pintally.past-page.${yard}.${stackId}`;
/** The same in the yard on screen. */
export const useDraftKey = (stackId: number): string =>
  draftKey(
    useYard(({ info }) => info?.uuid ?? null),
    stackId,
  );

/**
 * A page of a stack. It stays in this computer's window until it is saved or discarded, through reloads too.
 * @param key  of a page that no other window types
 */
export function usePageDraft(key: string) {
  const [page, setPage] = useState(() => readDraft(key));

  function set(changed: Partial<PageDraft>): void {
    const next = { ...page, ...changed };
    setPage(next);
    localStorage.setItem(key, JSON.stringify(next));
  }
  return {
    page,
    set,
    discard: (): void => {
      localStorage.removeItem(key);
      setPage(blankPage);
    },
  };
}
