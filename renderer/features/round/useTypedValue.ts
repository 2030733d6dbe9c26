import { useState } from 'react';
import type { Aim, ProbedBoard } from '../../../shared-core/contract/round.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { newestOf } from '../../stores/round.ts';

/** A value being typed, for the spot that was aimed at when it was begun. */
interface Draft extends Aim {
  text: string;
  /** The newest reading at the spot when it was begun; undefined while the board's readings were on their way. */
  before: number | null | undefined;
}

/**
 * The value typed so far. It stays with its spot when the meter saves there and the aim goes on; it goes along where
 * the person goes.
 * @param aim    where the window aims
 * @param probed the board aimed at; null while its readings are on their way
 */
export function useTypedValue(aim: Aim | null, probed: ProbedBoard | null) {
  const [draft, setDraft] = useState<Draft | null>(null);

  function begin(text: string, { boardId, spotIndex }: Aim): Draft {
    const before = probed?.boardId === boardId ? (newestOf(probed, spotIndex)?.id ?? null) : undefined;
    return { text, boardId, spotIndex, before };
  }
  if (draft && draft.before === undefined && probed?.boardId === draft.boardId) {
    setDraft(begin(draft.text, draft));
  }

  return {
    draft,
    type: (text: string): void => {
      if (draft !== null && draft.text.trim() !== '') setDraft({ ...draft, text });
      else if (aim !== null) setDraft(begin(text, aim));
    },
    stop: (): void => setDraft(null),
    restore: setDraft,
    /** The person went to another spot. */
    moveTo: (to: Aim): void => {
      setDraft((now) => now && begin(now.text, to));
    },
    /** What was saved at the draft's spot since it was begun. */
    filledBy: filledBy(draft, probed),
  };
}

function filledBy(draft: Draft | null, probed: ProbedBoard | null): JudgedReading | null {
  const isKnown = draft !== null && draft.before !== undefined && probed?.boardId === draft.boardId;
  if (!isKnown || draft.spotIndex === null || draft.text.trim() === '') return null;
  const newest = newestOf(probed, draft.spotIndex);
  return newest?.counts && newest.id > (draft.before ?? 0) ? newest : null;
}
