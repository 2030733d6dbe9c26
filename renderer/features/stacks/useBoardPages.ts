import { useCallback, useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { type Asked, useEach } from '../../data/useQuery.ts';
import { fetchBoards } from '../../stores/boards.ts';
import { attempt } from '../../stores/notices.ts';
import type { PagedRows } from '../../ui/DataTable.tsx';

const PAGE_ROWS = 100;

const pageOf = (index: number): number => Math.floor(index / PAGE_ROWS);

export interface BoardPages
  extends Omit<PagedRows<BoardRow>, 'count'>,
    Pick<Asked<never>, 'error' | 'again'> {
  /** Null until the first page has come. */
  count: number | null;
}

/** The boards of a stack, or of the yard, a page at a time as they come into sight; the first always, for the count. */
export function useBoardPages(stackId: number | null, search: string): BoardPages {
  const [inSight, setInSight] = useState({ first: 0, last: 0 });
  const pages = [0];
  for (let page = Math.max(1, inSight.first); page <= inSight.last; page++) pages.push(page);
  const asked = useEach(
    'boards.list',
    pages.map((page) => ({ stackId, search, offset: page * PAGE_ROWS, limit: PAGE_ROWS })),
  );
  const failed = asked.find(({ error }) => error !== null);
  return {
    count: asked[0]?.output?.total ?? null,
    rowAt: (index) => asked[pages.indexOf(pageOf(index))]?.output?.rows[index % PAGE_ROWS],
    onRange: useCallback((first: number, last: number) => {
      const now = { first: pageOf(first), last: pageOf(last) };
      setInSight((before) => (before.first === now.first && before.last === now.last ? before : now));
    }, []),
    fetch: (first, last) =>
      attempt(fetchBoards(stackId, search, first, last - first + 1).then(({ rows }) => rows)),
    error: failed?.error ?? null,
    again: () => failed?.again(),
  };
}
