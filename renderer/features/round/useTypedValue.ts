import { useEffect } from 'react';
import { newestOf, type ProbedBoard, type RoundState } from '../../../shared-core/contract/round.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { parseDecimal } from '../../../shared-core/units/decimal.ts';
import { type Draft, dropDraft, keepDraft, unsavedOf, useDraftsOf } from '../../stores/drafts.ts';
import { useYard } from '../../stores/yard.ts';

/**
 * The value typed so far. It belongs to the spot that was aimed at when it was begun: it stays there where the person
 * goes elsewhere, and in the field where the meter saves at its spot and the aim goes on.
 * @param probed the board aimed at; null while its readings are on their way
 */
export function useTypedValue({ id: roundId, aim, boards }: RoundState, probed: ProbedBoard | null) {
  const yard = useYard(({ info }) => info?.uuid ?? null);
  const drafts = useDraftsOf(roundId);
  const here = drafts.filter(({ boardId }) => boardId === aim?.boardId);
  const draft =
    here.find((each) => filledBy(each, probed)) ??
    here.find(({ spotIndex }) => spotIndex === aim?.spotIndex) ??
    null;
  const filled = draft && filledBy(draft, probed);

  function begin(text: string, at: Draft): void {
    const isKnown = probed?.boardId === at.boardId;
    keepDraft({ ...at, text, before: isKnown ? (newestOf(probed, at.spotIndex)?.id ?? null) : undefined });
  }
  useEffect(() => {
    if (!draft) return;
    if (draft.before === undefined && probed) begin(draft.text, draft);
    // Its answer was lost, but it was saved.
    if (draft.isSent && filled?.how === 'typed' && filled.raw === parseDecimal(draft.text)) dropDraft(draft);
  });

  return {
    draft,
    /** What was saved at the draft's spot since it was begun. */
    filledBy: filled,
    /** What is typed for another spot and not saved. */
    unsaved: unsavedOf(drafts, draft)[0],
    type: (text: string): void => {
      if (draft !== null && draft.text.trim() !== '') keepDraft({ ...draft, text, isSent: false });
      else if (aim) {
        const boardCode = boards.find(({ boardId }) => boardId === aim.boardId)?.code ?? '';
        begin(text, { ...aim, yard, roundId, boardCode, text });
      }
    },
    stop: (): void => {
      if (draft) dropDraft(draft);
    },
    /** Brings back what was typed before. */
    restore: (before: Draft | null): void => {
      if (before) keepDraft(before);
      else if (draft) dropDraft(draft);
    },
  };
}

function filledBy(draft: Draft, probed: ProbedBoard | null): JudgedReading | null {
  const isKnown = draft.before !== undefined && probed?.boardId === draft.boardId;
  if (!isKnown || draft.spotIndex === null || draft.text.trim() === '') return null;
  const newest = newestOf(probed, draft.spotIndex);
  return newest?.counts && newest.id > (draft.before ?? 0) ? newest : null;
}
