import { create } from 'zustand';
import { createJSONStorage, persist } from 'zustand/middleware';
import type { Aim } from '../../shared-core/contract/round.ts';
import { useYard } from './yard.ts';

/** A value typed for one spot of a round, and not saved yet. It is never saved at another spot by itself. */
export interface Draft extends Aim {
  yard: string | null;
  roundId: number;
  boardCode: string;
  text: string;
  /** The newest reading at the spot when it was begun; undefined while the board's readings were on their way. */
  before?: number | null | undefined;
  /** It was sent as it is, and nobody knows whether it was saved. */
  isSent?: boolean;
}

/** They last as long as the window does: going to another screen or a reload loses none. */
export const useDrafts = create<{ drafts: Draft[] }>()(
  persist(() => ({ drafts: [] as Draft[] }), {
    name: 'pintally.drafts',
    storage: createJSONStorage(() => sessionStorage),
  }),
);

const keyOf = ({ yard, roundId, boardId, spotIndex }: Draft): string =>
  [yard, roundId, boardId, spotIndex].join();
const isBlank = ({ text }: Draft): boolean => text.trim() === '';

export function dropDraft(draft: Draft): void {
  useDrafts.setState(({ drafts }) => ({ drafts: drafts.filter((each) => keyOf(each) !== keyOf(draft)) }));
}

/** In place of the one at the same spot. */
export function keepDraft(draft: Draft): void {
  dropDraft(draft);
  useDrafts.setState(({ drafts }) => ({ drafts: [...drafts, draft] }));
}

/** Those of a round, the one begun first in front. */
export function useDraftsOf(roundId: number): Draft[] {
  const yard = useYard(({ info }) => info?.uuid ?? null);
  return useDrafts(({ drafts }) => drafts).filter((each) => each.yard === yard && each.roundId === roundId);
}

/** Those with something in them that are in no field. */
export const unsavedOf = (drafts: readonly Draft[], inField: Draft | null = null): Draft[] =>
  drafts.filter((each) => each !== inField && !isBlank(each));

/** Whether something is typed there. */
export const isTypedAt = (roundId: number, { boardId, spotIndex }: Aim): boolean =>
  useDrafts
    .getState()
    .drafts.some(
      (each) =>
        each.roundId === roundId &&
        each.boardId === boardId &&
        each.spotIndex === spotIndex &&
        !isBlank(each),
    );
