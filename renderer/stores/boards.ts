import type { BoardRow } from '../../shared-core/contract/yard.ts';
import { bridge } from '../data/bridge.ts';

/** The most rows that the machine hands over at once. */
const ROWS_AT_ONCE = 500;

/**
 * All boards of a stack, or of the yard where `stackId` is null, that the search finds.
 *
 * @param first  how many to skip
 * @param most   stop after so many; `total` says how many there are in all
 */
export async function fetchBoards(
  stackId: number | null,
  search: string,
  first: number,
  most: number,
): Promise<{ total: number; rows: BoardRow[] }> {
  const rows: BoardRow[] = [];
  for (;;) {
    const page = await bridge().query('boards.list', {
      stackId,
      search,
      offset: first + rows.length,
      limit: Math.min(ROWS_AT_ONCE, most - rows.length),
    });
    rows.push(...page.rows);
    if (rows.length >= Math.min(most, page.total - first) || page.rows.length === 0) {
      return { total: page.total, rows };
    }
  }
}
