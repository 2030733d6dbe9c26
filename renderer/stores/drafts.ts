import { create } from 'zustand';
import { createJSONStorage, persist } from 'zustand/middleware';
import type { Aim } from '../../shared-core/contract/round.ts';
import type { ReadingUnit } from '../../shared-core/wood/moisture/corrected.ts';
import { typingUnit } from './typing-meter.ts';
import { useYard } from './yard.ts';

/** A value typed for one spot of a round, and not saved yet. It is never saved at another spot by itself. */
export interface Draft extends Aim {
  /** Two that came back unsaved may be for one spot. */
  id: string;
  yard: string | null;
  roundId: number;
  boardCode: string;
  text: string;
  /** Of the meter that it was read off; undefined where it was begun before the window knew the meter. */
  unit?: ReadingUnit | undefined;
  /** The newest reading at the spot when it was begun; undefined while the board's readings were on their way. */
  before?: number | null | undefined;
  /** It was sent as it is, and nobody knows whether it was saved. */
  isSent?: boolean;
}

interface DraftStore {
  drafts: Draft[];
  /**
   * The id of the one being typed. It stays in the field until it is saved or the person goes elsewhere: whatever the
   * machine answers meanwhile, a number is never split over two spots.
   */
  inField: string | null;
}

/** They last as long as the window does: going to another screen or a reload loses none. */
export const useDrafts = create<DraftStore>()(
  persist((): DraftStore => ({ drafts: [], inField: null }), {
    name: 'pintally.drafts',
    storage: createJSONStorage(() => sessionStorage),
  }),
);

/** The unit of what is typed. */
export const unitOfDraft = ({ unit }: Draft): ReadingUnit => unit ?? typingUnit() ?? 'pct';

const isBlank = ({ text }: Draft): boolean => text.trim() === '';

export function dropDraft(draft: Draft): void {
  useDrafts.setState(({ drafts, inField }) => ({
    drafts: drafts.filter((each) => each.id !== draft.id),
    inField: inField === draft.id ? null : inField,
  }));
}

/** It was saved after all, unless the person changed it meanwhile. */
export function dropSent({ id }: Draft): void {
  const sent = useDrafts.getState().drafts.find((each) => each.id === id && each.isSent);
  if (sent) dropDraft(sent);
}

/** In place of what it was before. */
export function keepDraft(draft: Draft): void {
  dropDraft(draft);
  useDrafts.setState(({ drafts }) => ({ drafts: [...drafts, draft] }));
}

/** Keeps what is being typed. */
export function typeDraft(draft: Draft): void {
  keepDraft(draft);
  useDrafts.setState({ inField: draft.id });
}

/** The person goes elsewhere: what is typed next is for another spot. */
export function leaveField(): void {
  useDrafts.setState({ inField: null });
}

/** The number being typed; null while none is. */
export function draftInField(roundId: number, { drafts, inField } = useDrafts.getState()): Draft | null {
  const draft = drafts.find((each) => each.roundId === roundId && each.id === inField);
  return draft === undefined || isBlank(draft) ? null : draft;
}

/** Those of a round, the one begun first in front. */
export function useDraftsOf(roundId: number): Draft[] {
  const yard = useYard(({ info }) => info?.uuid ?? null);
  return useDrafts(({ drafts }) => drafts).filter((each) => each.yard === yard && each.roundId === roundId);
}

/** Those with something in them that are in no field. */
export const unsavedOf = (drafts: readonly Draft[], inField: Draft | null = null): Draft[] =>
  drafts.filter((each) => each !== inField && !isBlank(each));
