import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { callsInOrder } from '../../ui/CallBadge.tsx';

/** A call, or that there is none yet. */
export type CallOrNone = Call | 'not-probed';

export const callsAndNone: readonly CallOrNone[] = [...callsInOrder, 'not-probed'];

export const callName = (call: CallOrNone, say: Say): string =>
  call === 'not-probed' ? say('labels.not-probed') : say(`call.${call}`);

/** A board as far as choosing it for a label needs it. */
export interface LabelBoard {
  id: number;
  code: string;
  speciesName: string;
  call: CallOrNone;
}

export const ofRow = (row: BoardRow): LabelBoard => ofContent(row.id, row);

export const ofContent = (
  id: number,
  {
    code,
    speciesName,
    latest,
  }: Pick<LabelContent, 'code' | 'speciesName'> & { latest: { call: Call } | null },
): LabelBoard => ({ id, code, speciesName, call: latest?.call ?? 'not-probed' });

/** The most labels that are made at once. */
export const MOST_LABELS = 2000;

/** The boards that get a label: those with one of these calls, less those excluded one by one. */
export function chosenBoards(
  boards: readonly LabelBoard[],
  calls: ReadonlySet<CallOrNone>,
  excluded: ReadonlySet<number>,
): LabelBoard[] {
  return boards.filter((board) => calls.has(board.call) && !excluded.has(board.id));
}
