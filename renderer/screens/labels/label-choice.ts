import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';

/** A call, or that there is none yet. */
export type Standing = Call | 'not-probed';

/** A board as far as choosing it for a label needs it. */
export interface LabelBoard {
  id: number;
  code: string;
  speciesName: string;
  standing: Standing;
}

export const ofRow = (row: BoardRow): LabelBoard => ({
  id: row.id,
  code: row.code,
  speciesName: row.speciesName,
  standing: row.latest?.call ?? 'not-probed',
});

export const ofContent = (id: number, content: LabelContent): LabelBoard => ({
  id,
  code: content.boardId,
  speciesName: content.speciesName,
  standing: content.call ?? 'not-probed',
});

/** The most labels that are made at once. */
export const MOST_LABELS = 2000;

/** The boards that get a label: of the standings wanted, less those left out one by one. */
export function chosenBoards(
  boards: readonly LabelBoard[],
  wanted: ReadonlySet<Standing>,
  leftOut: ReadonlySet<number>,
): LabelBoard[] {
  return boards.filter((board) => wanted.has(board.standing) && !leftOut.has(board.id));
}
