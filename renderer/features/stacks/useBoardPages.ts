import { useCallback, useEffect, useRef, useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useChanges } from '../../data/useChanges.ts';
import { useLink } from '../../stores/link.ts';
import { sentenceOf } from '../../stores/notices.ts';

export const PAGE_ROWS = 100;

interface Pages {
  /** Which list these are pages of. */
  key: string;
  total: number;
  rows: Map<number, BoardRow[]>;
}

export interface BoardPages {
  /** Null until the first page has come. */
  total: number | null;
  error: string | null;
  /** Undefined while its page is on its way. */
  rowAt: (index: number) => BoardRow | undefined;
  /** Takes which rows are in sight, so that their pages are fetched. */
  show: (first: number, last: number) => void;
  again: () => void;
}

/**
 * The boards of a stack, or of the yard, a page at a time as they come into sight: a hundred thousand scroll as well as
 * ten. After a change of the yard the pages in sight are asked for again; the old ones stay on screen until they come.
 */
export function useBoardPages(stackId: number | null, search: string): BoardPages {
  const [pages, setPages] = useState<Pages | null>(null);
  const [error, setError] = useState<string | null>(null);
  const [inSight, setInSight] = useState({ first: 0, last: 0 });
  const [asked, setAsked] = useState(0);
  const changes = useChanges('stacks', 'places', 'species', stackId === null ? 'boards' : `stack:${stackId}`);
  const returns = useLink((link) => link.returns);
  const key = `${stackId} ${search}`;
  const reason = `${key} ${changes} ${returns} ${asked}`;
  /** For which reason each page was last asked for. */
  const askedFor = useRef(new Map<number, string>());
  const newest = useRef(key);
  newest.current = key;

  useEffect(() => {
    for (let page = inSight.first; page <= inSight.last; page++) {
      if (askedFor.current.get(page) === reason) continue;
      askedFor.current.set(page, reason);
      bridge()
        .query('boards.list', { stackId, search, offset: page * PAGE_ROWS, limit: PAGE_ROWS })
        .then(({ total, rows }) => {
          if (newest.current !== key) return;
          setError(null);
          setPages((before) => {
            const saved = before?.key === key ? before.rows : new Map<number, BoardRow[]>();
            return { key, total, rows: new Map(saved).set(page, rows) };
          });
        })
        .catch((failure: unknown) => {
          if (newest.current !== key) return;
          // Asked for again when it is next in sight.
          askedFor.current.delete(page);
          setError(sentenceOf(failure));
        });
    }
  }, [inSight, key, reason, search, stackId]);

  const current = pages?.key === key ? pages : null;
  const show = useCallback((first: number, last: number) => {
    const inPages = { first: Math.floor(first / PAGE_ROWS), last: Math.floor(last / PAGE_ROWS) };
    setInSight((before) =>
      before.first === inPages.first && before.last === inPages.last ? before : inPages,
    );
  }, []);
  return {
    total: current?.total ?? null,
    error,
    rowAt: (index) => current?.rows.get(Math.floor(index / PAGE_ROWS))?.[index % PAGE_ROWS],
    show,
    again: () => setAsked((count) => count + 1),
  };
}
