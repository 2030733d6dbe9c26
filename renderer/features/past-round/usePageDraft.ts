import { useState } from 'react';
import { useYard } from '../../stores/yard.ts';
import { blankPage, type PageDraft, pageDraftSchema } from './page-draft.ts';

function read(key: string): PageDraft {
  try {
    return pageDraftSchema.parse(JSON.parse(localStorage.getItem(key) ?? 'null'));
  } catch {
    return blankPage;
  }
}

/** Where the page of a stack is while it is typed. */
export function useDraftKey(stackId: number): string {
  const yard = useYard(({ info }) => info?.uuid ?? null);
  return `pintally.past-page.${yard}.${stackId}`;
}

/**
 * A page of a stack. It stays in this computer's window until it is saved or discarded, through reloads too.
 * @param key  of a page that no other window types
 */
export function usePageDraft(key: string) {
  const [page, setPage] = useState(() => read(key));

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
