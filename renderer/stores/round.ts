import { create } from 'zustand';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type {
  RoundBoard,
  RoundChange,
  RoundState,
  RoundSummary,
  ValueNotKept,
} from '../../shared-core/contract/round.ts';
import type { JudgedReading } from '../../shared-core/probing/reading.ts';
import { bridge } from '../bridge.ts';
import { useNavigation } from './navigation.ts';
import { sentenceOf, tellProblem } from './notices.ts';

/** A reading that was just kept, for the sound, the flash and the screen reader. */
export interface Kept {
  reading: JudgedReading;
  board: RoundBoard;
}

interface RoundStore {
  /** Null until it was asked for. */
  round: RoundState | null;
  /** Why it could not be asked for. */
  error: string | null;
  /** Why the last thing that was tried in the round did not happen; null once something did. */
  trouble: string | null;
  kept: Kept | null;
}

const nothing: RoundStore = { round: null, error: null, trouble: null, kept: null };

export const useRound = create<RoundStore>()(() => nothing);

function withBoard(round: RoundState, board: RoundBoard | null): RoundBoard[] {
  return board === null
    ? round.boards
    : round.boards.map((each) => (each.boardId === board.boardId ? board : each));
}

/** What was kept last, as long as nobody set it aside. */
function stillKept(kept: Kept | null, changed: RoundBoard | null): Kept | null {
  if (!kept || kept.board.boardId !== changed?.boardId) return kept;
  const reading = changed.assessment?.readings.find((each) => each.id === kept.reading.id);
  return reading && reading.setAside === null ? { reading, board: changed } : null;
}

/** Merges what happened into the round on screen; news of another round changes nothing. */
export function mergeChange(change: RoundChange): void {
  useRound.setState((store) => {
    if (store.round?.id !== change.roundId) return store;
    const reading = change.board?.assessment?.readings.find((each) => each.id === change.keptReadingId);
    return {
      round: {
        ...store.round,
        aim: change.aim,
        boards: withBoard(store.round, change.board),
        summary: change.summary,
      },
      trouble: reading ? null : store.trouble,
      kept: reading && change.board ? { reading, board: change.board } : stillKept(store.kept, change.board),
    };
  });
}

/** Listens to the round from now on. */
export function followRound(): () => void {
  return bridge().on('round.changed', mergeChange);
}

/** Shows in the round why a value was not kept; the meter goes on while another screen is open, and then it is told there. */
function showNotKept({ roundId, sentence }: ValueNotKept): void {
  const { route } = useNavigation.getState();
  if (route.name === 'round' && route.id === roundId) useRound.setState({ trouble: sentence });
  else tellProblem(new Refusal(sentence));
}

/** Listens from now on, on every screen, for values that could not be kept. */
export function followNotKept(): () => void {
  return bridge().on('round.notKept', showNotKept);
}

/** Brings a round on screen. */
export async function loadRound(roundId: number): Promise<void> {
  if (useRound.getState().round?.id !== roundId) useRound.setState(nothing);
  try {
    useRound.setState({ round: await bridge().call('rounds.get', { roundId }), error: null });
  } catch (error) {
    useRound.setState({ error: sentenceOf(error) });
  }
}

/** Does something in the round on screen; a refusal is shown there until the next thing is done. */
async function inRound(work: (round: RoundState) => Promise<unknown>): Promise<void> {
  const { round } = useRound.getState();
  if (!round) return;
  useRound.setState({ trouble: null });
  try {
    await work(round);
  } catch (error) {
    useRound.setState({ trouble: sentenceOf(error) });
  }
}

/** The first spot of the plan without a reading that counts; null when all have one. */
function firstOpenSpot(board: RoundBoard): number | null {
  const read = new Set(
    board.assessment?.readings.filter((reading) => reading.counts).map((reading) => reading.spotIndex),
  );
  const open = board.plan.findIndex((_, index) => !read.has(index));
  return open === -1 ? null : open;
}

/** Aims at a spot of a board; with null, at its first open spot. On screen at once, so that two quick Enters are two. */
export function aimAt(boardIndex: number, spotIndex: number | null): Promise<void> {
  return inRound((round) => {
    const board = round.boards[boardIndex];
    if (board) {
      const aim = { boardIndex, spotIndex: spotIndex ?? firstOpenSpot(board) };
      useRound.setState({ round: { ...round, aim } });
    }
    return bridge().call('rounds.aim', { roundId: round.id, boardIndex, spotIndex });
  });
}

export const takeNow = () => inRound((round) => bridge().call('rounds.take', { roundId: round.id }));
export const keepTyped = (raw: number) =>
  inRound((round) => bridge().call('rounds.type', { roundId: round.id, raw }));
export const setLastAside = () => inRound((round) => bridge().call('rounds.undo', { roundId: round.id }));
export const setAside = (readingId: number, why: string) =>
  inRound(() => bridge().call('readings.setAside', { readingId, why }));
export const putBack = (readingId: number) => inRound(() => bridge().call('readings.putBack', { readingId }));

/** With `boardId` null, for the whole round. */
export function setWoodTemp(boardId: number | null, woodTempC: number | null): Promise<void> {
  return inRound(async (round) => {
    await bridge().call('rounds.setTemperature', { roundId: round.id, boardId, woodTempC });
    // The events carry the boards; the round's own temperature comes with the whole.
    if (boardId === null) await loadRound(round.id);
  });
}

export function finishRound(): Promise<void> {
  return inRound(async (round) => {
    const summary: RoundSummary = await bridge().call('rounds.finish', { roundId: round.id });
    useRound.setState({ round: { ...round, summary } });
    await loadRound(round.id);
  });
}
