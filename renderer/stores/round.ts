import { create } from 'zustand';
import { Refusal } from '../../shared-core/contract/answer.ts';
import {
  type Aim,
  firstOpenSpot,
  type ProbedBoard,
  type RoundBoard,
  type RoundChange,
  type RoundState,
  type RoundSummary,
  type ValueNotSaved,
} from '../../shared-core/contract/round.ts';
import { isTouched, type Topic } from '../../shared-core/contract/topics.ts';
import type { Exclusion } from '../../shared-core/probing/readings/exclusion.ts';
import type { JudgedReading } from '../../shared-core/probing/readings/reading.ts';
import { bridge } from '../bridge.ts';
import { useNavigation } from './navigation.ts';
import { sentenceOf, tellProblem } from './notices.ts';
import { isShown } from './yard.ts';

/** A reading that was just saved, for the sound, the flash and the screen reader. */
export interface Saved {
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
  saved: Saved | null;
}

const nothing: RoundStore = { round: null, error: null, trouble: null, saved: null };

export const useRound = create<RoundStore>()(() => nothing);

/** The board aimed at with its readings; null while they are on their way. */
export const probedOf = ({ boards, aim, probed }: RoundState): ProbedBoard | null =>
  boards[aim.boardIndex]?.boardId === probed?.boardId ? probed : null;

/** The reading saved last, as long as it is not excluded. */
function stillSaved(saved: Saved | null, changed: ProbedBoard): Saved | null {
  if (saved?.board.boardId !== changed.boardId) return saved;
  const reading = changed.assessment?.readings.find((each) => each.id === saved.reading.id);
  return reading && reading.excluded === null ? { reading, board: changed } : null;
}

/** Requests on their way that aim elsewhere; until the last is answered, the window knows the aim better. */
let aiming = 0;

/** Whether the change was sent before the machine knew the newest aim. */
const isBehind = (change: RoundChange, aim: Aim): boolean =>
  aiming > 1 || (aiming === 1 && change.aim.boardIndex !== aim.boardIndex);

/** Merges what happened into the round on screen; news of another round changes nothing. */
export function mergeChange(change: RoundChange): void {
  useRound.setState((store) => {
    if (store.round?.id !== change.roundId) return store;
    const { board, summary, savedReadingId } = change;
    const aim = isBehind(change, store.round.aim) ? store.round.aim : change.aim;
    const reading = board.assessment?.readings.find((each) => each.id === savedReadingId);
    const boards = store.round.boards.map((each) => (each.boardId === board.boardId ? board : each));
    const isAimedAt = boards[aim.boardIndex] === board;
    return {
      round: { ...store.round, aim, boards, summary, probed: isAimedAt ? board : store.round.probed },
      trouble: reading ? null : store.trouble,
      saved: reading ? { reading, board } : stillSaved(store.saved, board),
    };
  });
}

/** What is read comes as `round.changed`; everything else that the round shows is asked for again when it changes. */
function askAgain(topics: readonly Topic[]): void {
  const { round } = useRound.getState();
  if (round === null) return;
  const changed = new Set(topics);
  const isBeingJudged = round.boards.some((board) => board.isRead && board.finding === null);
  const watched: Topic[] = ['stacks', 'places', 'species', 'endUses'];
  if (isBeingJudged || round.finishedAt !== null) watched.push(`round:${round.id}`);
  if (isTouched(watched, changed)) void refreshRound(round.id);
}

/** Listens to the round from now on. */
export function followRound(): () => void {
  const unfollow = [
    bridge().on('round.changed', mergeChange),
    bridge().on('changed', ({ yard, topics }) => isShown(yard) && askAgain(topics)),
  ];
  return () => {
    for (const each of unfollow) each();
  };
}

/** Shows in the round why a value was not saved. The meter goes on while another screen is open; then it is shown there. */
function showNotSaved({ roundId, problem }: ValueNotSaved): void {
  const refusal = new Refusal(problem);
  const { route } = useNavigation.getState();
  if (route.name === 'round' && route.id === roundId) useRound.setState({ trouble: sentenceOf(refusal) });
  else tellProblem(refusal);
}

/** Listens from now on, on every screen, for values that could not be saved. */
export function followNotSaved(): () => void {
  return bridge().on('round.notSaved', showNotSaved);
}

/** Opens a round: it comes on screen, and the meter is aimed at it. */
export function openRound(roundId: number): Promise<void> {
  if (useRound.getState().round?.id !== roundId) useRound.setState(nothing);
  return show(bridge().command('rounds.open', { roundId }));
}

/** Asks again for the round on screen. */
function refreshRound(roundId: number): Promise<void> {
  return show(bridge().query('rounds.get', { roundId }));
}

async function show(asked: Promise<RoundState>): Promise<void> {
  try {
    useRound.setState({ round: await asked, error: null });
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

/** Aims at a spot of a board; with null, at its first open spot. On screen at once, so that two quick Enters are two. */
export function aimAt(boardIndex: number, spotIndex: number | null): Promise<void> {
  return inRound(async (round) => {
    const board = round.boards[boardIndex];
    if (board) {
      const aim = { boardIndex, spotIndex: spotIndex ?? firstOpenSpot(board) };
      const probed = board.isRead ? round.probed : { ...board, assessment: null };
      useRound.setState({ round: { ...round, aim, probed } });
    }
    aiming++;
    try {
      await bridge().command('rounds.aim', { roundId: round.id, boardIndex, spotIndex });
    } finally {
      aiming--;
    }
  });
}

export const takeNow = () => inRound((round) => bridge().command('rounds.take', { roundId: round.id }));
export const saveTyped = (raw: number) =>
  inRound((round) => bridge().command('rounds.type', { roundId: round.id, raw }));
export const excludeLast = () => inRound((round) => bridge().command('rounds.undo', { roundId: round.id }));
/** @throws Refusal, for the dialog that asked why */
export async function exclude(readingId: number, why: Exclusion): Promise<void> {
  await bridge().command('readings.exclude', { readingId, why });
  useRound.setState({ trouble: null });
}
export const include = (readingId: number) =>
  inRound(() => bridge().command('readings.include', { readingId }));

/** With `boardId` null, for the whole round. */
export function setWoodTemp(boardId: number | null, woodTempC: number | null): Promise<void> {
  return inRound(async (round) => {
    await bridge().command('rounds.setTemperature', { roundId: round.id, boardId, woodTempC });
    // The event carries one board; all others, and the round's own temperature, come with the whole.
    if (boardId !== null) return;
    await refreshRound(round.id);
    // The reading saved last on another board may have another value now.
    useRound.setState(({ round: now, saved }) =>
      now?.probed?.boardId === saved?.board.boardId ? {} : { saved: null },
    );
  });
}

export function finishRound(): Promise<void> {
  return inRound(async (round) => {
    const summary: RoundSummary = await bridge().command('rounds.finish', { roundId: round.id });
    useRound.setState({ round: { ...round, summary } });
    await refreshRound(round.id);
  });
}
