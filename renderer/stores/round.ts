import { create } from 'zustand';
import type { RoundBoard, RoundState } from '../../shared-core/contract/round.ts';
import type { JudgedReading } from '../../shared-core/probing/readings/reading.ts';
import type { Message } from '../../shared-core/words/message.ts';
import { tellBesideLink } from './link.ts';
import { sentenceOf } from './notices.ts';

/** A reading that was just saved, for the sound, the flash and the screen reader. */
export interface Saved {
  reading: JudgedReading;
  board: RoundBoard;
  /** Whether all spots of the board were read before it. */
  wasDone: boolean;
}

interface RoundStore {
  /** Null until it was asked for. */
  round: RoundState | null;
  /** Why it could not be asked for. */
  error: string | null;
  /** Why the last thing that was tried in the round did not happen; null once something did. */
  trouble: string | null;
  /** What was just done, where nothing else on screen says so. */
  done: Message | null;
  /** The pins that are in were saved, and the person asked to save them again: the new value may replace that reading. */
  offersReplacing: boolean;
  saved: Saved | null;
}

/** Of a round that was not asked for yet. */
export const nothing: RoundStore = {
  round: null,
  error: null,
  trouble: null,
  done: null,
  offersReplacing: false,
  saved: null,
};

/** The round on screen, and what was last said in it. */
export const useRound = create<RoundStore>()(() => nothing);

/** Does something in the round on screen; a refusal is shown there until the next thing is done. */
export async function inRound(work: (round: RoundState) => Promise<unknown>): Promise<void> {
  const { round } = useRound.getState();
  if (!round) return;
  useRound.setState({ trouble: null, done: null, offersReplacing: false });
  try {
    await work(round);
  } catch (error) {
    tellBesideLink(error, () => useRound.setState({ trouble: sentenceOf(error) }));
  }
}
