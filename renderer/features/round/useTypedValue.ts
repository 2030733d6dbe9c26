import { useEffect } from 'react';
import { newestOf, type ProbedBoard, type RoundState } from '../../../shared-core/contract/round.ts';
import { parseTyped } from '../../../shared-core/labels/typed-value.ts';
import { withoutAbove } from '../../../shared-core/probing/readings/beyond-scale.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { newUuid } from '../../data/uuid.ts';
import {
  type Draft,
  draftInField,
  dropDraft,
  typeDraft,
  unitOfDraft,
  unsavedOf,
  useDrafts,
  useDraftsOf,
} from '../../stores/drafts.ts';
import { goOnFrom, isSending } from '../../stores/round-aim.ts';
import { typingUnit } from '../../stores/typing-meter.ts';
import { useYard } from '../../stores/yard.ts';

/**
 * The value typed so far. It belongs to the spot that was aimed at when it was begun: it stays there where the person
 * goes elsewhere, and in the field where the aim goes on by itself.
 * @param probed the board aimed at; null while its readings are on their way
 */
export function useTypedValue({ id: roundId, aim, boards }: RoundState, probed: ProbedBoard | null) {
  const yard = useYard(({ info }) => info?.uuid ?? null);
  const drafts = useDraftsOf(roundId);
  const here = drafts.filter(({ boardId }) => boardId === aim?.boardId);
  const draft =
    useDrafts((store) => draftInField(roundId, store)) ??
    here.find((each) => filledBy(each, probed)) ??
    here.find(({ spotIndex }) => spotIndex === aim?.spotIndex) ??
    null;
  const filled = draft && filledBy(draft, probed);

  function begin(at: Draft): void {
    // What is on its way to the spot was there before this, too.
    const isKnown = probed?.boardId === at.boardId && !isSending(at);
    typeDraft({ ...at, before: isKnown ? (newestOf(probed, at.spotIndex)?.id ?? null) : undefined });
  }
  useEffect(() => {
    if (!draft) return;
    if (draft.before === undefined && probed?.boardId === draft.boardId && !isSending(draft)) begin(draft);
    // Its answer was lost, but it was saved.
    if (draft.isSent && filled?.how === 'typed' && isSame(filled, draft)) dropDraft(draft);
  });

  return {
    draft,
    /** What was saved at the draft's spot since it was begun. */
    filledBy: filled,
    /** What is typed for another spot and not saved. */
    unsaved: unsavedOf(drafts, draft)[0],
    type: (text: string): void => {
      const [spotIndex, before] = [draft?.spotIndex ?? null, draft?.text ?? ''];
      if (draft?.isSent && spotIndex !== null && text.length > before.length && text.startsWith(before)) {
        // It came back unsaved under the hands of a person who types the next number.
        const next = goOnFrom({ ...draft, spotIndex });
        const rest = { id: newUuid(), text: text.slice(before.length), unit: typingUnit(), isSent: false };
        begin({ ...draft, ...next, ...rest });
      } else if (draft !== null && draft.text.trim() !== '')
        // Begun in one unit it stays in it, also where another meter is chosen meanwhile: Enter then says so. What is
        // typed after that is read off that meter.
        typeDraft({
          ...draft,
          text,
          unit: draft.isSent ? typingUnit() : (draft.unit ?? typingUnit()),
          isSent: false,
        });
      else if (aim) {
        const boardCode = boards.find(({ boardId }) => boardId === aim.boardId)?.code ?? '';
        begin({ ...aim, id: newUuid(), yard, roundId, boardCode, text, unit: typingUnit() });
      }
    },
    /** What was typed with every spot of the board read goes to one of them. */
    takeTo: (spotIndex: number): void => {
      if (draft !== null && draft.spotIndex === null && draft.text.trim() !== '')
        begin({ ...draft, spotIndex, isSent: false });
    },
    stop: (): void => {
      if (draft) dropDraft(draft);
    },
    /** Brings back what was typed before. */
    restore: (before: Draft | null): void => {
      if (before) typeDraft(before);
      else if (draft) dropDraft(draft);
    },
  };
}

const isSame = ({ raw, unit }: JudgedReading, draft: Draft): boolean =>
  unit === unitOfDraft(draft) && raw === parseTyped(withoutAbove(draft.text).text, unit);

function filledBy(draft: Draft, probed: ProbedBoard | null): JudgedReading | null {
  const isKnown = draft.before !== undefined && probed?.boardId === draft.boardId;
  if (!isKnown || draft.spotIndex === null || draft.text.trim() === '') return null;
  const newest = newestOf(probed, draft.spotIndex);
  return newest?.counts && newest.id > (draft.before ?? 0) ? newest : null;
}
