import { useEffect, useState } from 'react';
import { useYard } from '../../stores/yard.ts';
import { blankPage, type PageDraft, pageDraftSchema } from './page-draft.ts';

function read(key: string): PageDraft {
  try {
    return pageDraftSchema.parse(JSON.parse(localStorage.getItem(key) ?? 'null'));
  } catch {
    return blankPage;
  }
}

/** A page of a stack. It stays in this computer's window until it is saved or discarded, through reloads too. */
export function usePageDraft(stackId: number) {
  const yard = useYard(({ info }) => info?.uuid ?? null);
  const key = `pintally.past-page.${yard}.${stackId}`;
  const [page, setPage] = useState(() => read(key));
  useEffect(() => {
    // Another window with the same page.
    const follow = (event: StorageEvent) => {
      if (event.key === key) setPage(read(key));
    };
    addEventListener('storage', follow);
    return () => removeEventListener('storage', follow);
  }, [key]);

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
