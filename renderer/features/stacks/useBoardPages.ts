import { useCallback, useRef, useState } from 'react';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { type Asked, useEach } from '../../data/useQuery.ts';
import { attempt } from '../../stores/notices.ts';
import type { PagedRows } from '../../ui/DataTable.tsx';

const PAGE_ROWS = 100;
/** The most rows that the machine hands over at once. */
const ROWS_AT_ONCE = 500;

const pageOf = (index: number): number => Math.floor(index / PAGE_ROWS);

/** Which boards, in which order. */
type Which = Omit<RequestInput<'boards.list'>, 'offset' | 'limit'>;

export interface BoardPages
  extends Omit<PagedRows<BoardRow>, 'count'>,
    Pick<Asked<never>, 'error' | 'again'> {
  /** Null until the first page has come. */
  count: number | null;
  /** Of the pages in sight. */
  loaded: readonly BoardRow[];
}

/** Boards a page at a time as they come into sight; the first page always, for the count. */
export function useBoardPages(which: Which): BoardPages {
  const [inSight, setInSight] = useState({ first: 0, last: 0 });
  const pages = [0];
  for (let page = Math.max(1, inSight.first); page <= inSight.last; page++) pages.push(page);
  const asked = useEach(
    'boards.list',
    pages.map((page) => ({ ...which, offset: page * PAGE_ROWS, limit: PAGE_ROWS })),
  );
  const failed = asked.find(({ error }) => error !== null);
  // As many in another order: the table stays while they come.
  const counted = useRef<{ of: string; count: number | null }>({ of: '', count: null });
  const of = JSON.stringify({ ...which, sort: null, descending: null });
  const count = asked[0]?.output?.total ?? (counted.current.of === of ? counted.current.count : null);
  counted.current = { of, count };
  return {
    count,
    loaded: asked.flatMap(({ output }) => output?.rows ?? []),
    rowAt: (index) => asked[pages.indexOf(pageOf(index))]?.output?.rows[index % PAGE_ROWS],
    onRange: useCallback((first: number, last: number) => {
      const now = { first: pageOf(first), last: pageOf(last) };
      setInSight((before) => (before.first === now.first && before.last === now.last ? before : now));
    }, []),
    fetch: (first, last) => attempt(fetchRows(which, first, last)),
    error: failed?.error ?? null,
    again: () => failed?.again(),
  };
}

async function fetchRows(which: Which, first: number, last: number): Promise<BoardRow[]> {
  const fetched: BoardRow[] = [];
  for (let offset = first; offset <= last; offset += ROWS_AT_ONCE) {
    const limit = Math.min(ROWS_AT_ONCE, last - offset + 1);
    fetched.push(...(await bridge().query('boards.list', { ...which, offset, limit })).rows);
  }
  return fetched;
}
