import { create } from 'zustand';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { RequestInput } from '../../shared-core/contract/requests.ts';
import {
  type Aim,
  type InsertionReading,
  newestOf,
  type ProbedBoard,
  probedOf,
  type RoundBoard,
  type RoundChange,
  type RoundOutdated,
  type RoundState,
  type ValueNotSaved,
} from '../../shared-core/contract/round.ts';
import { isTouched, type Topic } from '../../shared-core/contract/topics.ts';
import type { Exclusion } from '../../shared-core/probing/readings/exclusion.ts';
import type { JudgedReading } from '../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../shared-core/probing/readings/spots.ts';
import { shown } from '../../shared-core/probing/suspicions/reading-suspicions.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import { bridge } from '../data/bridge.ts';
import { type Draft, draftInField, dropDraft, keepDraft, leaveField } from './drafts.ts';
import { tellBesideLink } from './link.ts';
import { useMeter } from './meter.ts';
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
  /** What was just done, where nothing else on screen says so. */
  done: Message | null;
  /** The pins that are in were saved, and the person asked to save them again: the new value may replace that reading. */
  offersReplacing: boolean;
  saved: Saved | null;
}

const nothing: RoundStore = {
  round: null,
  error: null,
  trouble: null,
  done: null,
  offersReplacing: false,
  saved: null,
};

export const useRound = create<RoundStore>()(() => nothing);

/** The reading saved last, as long as it is not excluded. */
function stillSaved(saved: Saved | null, changed: ProbedBoard): Saved | null {
  if (saved?.board.boardId !== changed.boardId) return saved;
  const reading = changed.assessment?.readings.find((each) => each.id === saved.reading.id);
  return reading && reading.excluded === null ? { reading, board: changed } : null;
}

/** Requests on their way that move the aim; until the last is answered, the window knows the aim better. */
const moving = new Set<Promise<unknown>>();
/** What the machine told last while requests were on their way. */
let told: RoundChange | null = null;

async function move(request: Promise<unknown>): Promise<void> {
  moving.add(request);
  try {
    await request;
  } finally {
    moving.delete(request);
    if (moving.size === 0 && told) follow(told);
  }
}

/** Spots whose readings are on their way: they are filled as far as the window knows. */
const sending = new Set<Aim>();

/** The spots of a board still to be read, from one of them on and round to it again; none while that is not known. */
export function spotsToRead({ boardId, isRead, finding, ...sizes }: RoundBoard, from = 0): number[] {
  if (isRead && finding === null) return [];
  const { length } = planSpots(sizes).plan;
  const onTheirWay = [...sending].filter((each) => each.boardId === boardId);
  return Array.from({ length }, (_, index) => (from + index) % length).filter(
    (spot) =>
      typeof finding?.spotPcts[spot] !== 'number' && !onTheirWay.some((each) => each.spotIndex === spot),
  );
}

const firstToRead = (board: RoundBoard, from?: number): number | null => spotsToRead(board, from)[0] ?? null;

const isSame = (one: Aim | null, other: Aim): boolean =>
  one?.boardId === other.boardId && one.spotIndex === other.spotIndex;

/** Aims on screen where the machine does, but never away from an open spot that a number is being typed for. */
function follow({
  roundId,
  aim,
  board,
}: Pick<RoundChange, 'roundId' | 'aim'> & { board?: ProbedBoard }): void {
  told = null;
  const { round } = useRound.getState();
  if (round?.id !== roundId || isSame(round.aim, aim)) return;
  const typed = draftInField(roundId);
  const at = round.boards.find(({ boardId }) => boardId === typed?.boardId);
  if (typed && at && isSame(round.aim, typed) && spotsToRead(at).some((spot) => spot === typed.spotIndex)) {
    const { boardId, spotIndex } = typed;
    void inRound(() => move(bridge().command('rounds.aim', { roundId, boardId, spotIndex })));
    return;
  }
  const probed = board?.boardId === aim.boardId ? board : round.probed;
  useRound.setState({ round: { ...round, aim, probed } });
}

/** Merges what happened into the round on screen; news of another round changes nothing. */
export function mergeChange(change: RoundChange): void {
  useRound.setState((store) => {
    if (store.round?.id !== change.roundId) return store;
    const { board, summary, savedReadingId } = change;
    const reading = board.assessment?.readings.find((each) => each.id === savedReadingId);
    const boards = store.round.boards.map((each) => (each.boardId === board.boardId ? board : each));
    const isAimedAt = board.boardId === store.round.aim?.boardId;
    return {
      round: { ...store.round, boards, summary, probed: isAimedAt ? board : store.round.probed },
      trouble: reading ? null : store.trouble,
      done: reading ? null : store.done,
      offersReplacing: reading ? false : store.offersReplacing,
      saved: reading ? { reading, board } : stillSaved(store.saved, board),
    };
  });
  if (moving.size === 0) follow(change);
  else told = change;
}

/** What is read comes as `round.changed`; everything else that the round shows is asked for again when it changes. */
function askAgain(topics: readonly Topic[]): void {
  const { round } = useRound.getState();
  if (round === null) return;
  const changed = new Set(topics);
  if (changed.has('yard')) {
    // Where another window opened another yard meanwhile, nothing aims here any more.
    void openRound(round.id);
    return;
  }
  const isBeingJudged = round.boards.some((board) => board.isRead && board.finding === null);
  const watched: Topic[] = ['stacks', 'places', 'species', 'endUses'];
  if (isBeingJudged || round.finishedAt !== null) watched.push(`round:${round.id}`);
  if (!isTouched(watched, changed)) return;
  // One that another window reopened takes readings here, too.
  void (round.aim === null ? openRound(round.id) : refreshRound(round.id));
}

/** More changed than one board, as where boards left the stack. */
function takeIn({ roundId, why }: RoundOutdated): void {
  if (useRound.getState().round?.id !== roundId) return;
  if (why !== null) useRound.setState({ trouble: sentenceOf(new Refusal(why)) });
  void refreshRound(roundId);
}

/** Listens to the round from now on. */
export function followRound(): () => void {
  const unfollow = [
    bridge().on('round.changed', mergeChange),
    bridge().on('round.outdated', takeIn),
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

/** The machine was asked before it knew the newest aim where one is still on its way. */
function withNewestAim(fresh: RoundState, { id, aim, probed }: RoundState): RoundState {
  if (moving.size === 0 || fresh.id !== id || fresh.aim === null) return fresh;
  return { ...fresh, aim, probed: fresh.probed?.boardId === aim?.boardId ? fresh.probed : probed };
}

async function show(asked: Promise<RoundState>): Promise<void> {
  try {
    const fresh = await asked;
    useRound.setState(({ round, saved }) => ({
      round: round ? withNewestAim(fresh, round) : fresh,
      error: null,
      saved: fresh.finishedAt === null ? saved : null,
    }));
  } catch (error) {
    useRound.setState({ error: sentenceOf(error) });
  }
}

/** Does something in the round on screen; a refusal is shown there until the next thing is done. */
async function inRound(work: (round: RoundState) => Promise<unknown>): Promise<void> {
  const { round } = useRound.getState();
  if (!round) return;
  useRound.setState({ trouble: null, done: null, offersReplacing: false });
  try {
    await work(round);
  } catch (error) {
    tellBesideLink(error, () => useRound.setState({ trouble: sentenceOf(error) }));
  }
}

/** The newest reading of a spot that the window shows. */
const newestAt = (round: RoundState | null, { boardId, spotIndex }: Aim): number | null =>
  (round?.probed?.boardId === boardId && newestOf(round.probed, spotIndex)?.id) || null;

/** A board without readings is known before the machine answers, but for its last round. */
const unread = (board: RoundBoard): ProbedBoard => ({ ...board, assessment: null, lastRound: null });

/** Aims at a spot of a board; with null, at its first open spot. On screen at once, so that two quick Enters are two. */
export function aimAt(boardId: number, spotIndex: number | null): Promise<void> {
  leaveField();
  return inRound(async (round) => {
    const board = round.boards.find((each) => each.boardId === boardId);
    if (board) {
      const aim = { boardId, spotIndex: spotIndex ?? firstToRead(board) };
      const probed = board.isRead ? round.probed : unread(board);
      useRound.setState({ round: { ...round, aim, probed } });
    }
    await move(bridge().command('rounds.aim', { roundId: round.id, boardId, spotIndex }));
  });
}

/** Says of a board that was left while readings of it were on their way where one of them was not used. */
export async function sayLeftOpen({ boardId, code }: RoundBoard): Promise<void> {
  const round = await settledRound();
  const board = round?.boards.find((each) => each.boardId === boardId);
  const spots = board ? spotsToRead(board).length : 0;
  if (spots === 0) return;
  const leftOpen = sentenceOf(new Refusal(message('round.left-open', { boardCode: code, spots })));
  useRound.setState(({ trouble }) => ({ trouble: trouble ?? leftOpen }));
}

/** What a command that saves names beside the value. */
type SpotToSave = Omit<RequestInput<'rounds.saveLive'>, 'roundId'>;

/** The round on screen once nothing is on its way that moves the aim. */
export async function settledRound(): Promise<RoundState | null> {
  await Promise.allSettled([...moving]);
  return useRound.getState().round;
}

/**
 * Saves at a spot, and goes on to the next one on screen at once, so that the next value is not saved at this one too.
 * @throws Refusal; the aim is back at the spot then, unless the person went on
 */
async function saveAt(
  { boardId, spotIndex: given }: Aim,
  send: (at: SpotToSave) => Promise<unknown>,
): Promise<void> {
  const find = (round: RoundState | null) => round?.boards.find((each) => each.boardId === boardId);
  let { round } = useRound.getState();
  // Typed before the window knew which spot is the first one to read.
  const unjudged = find(round);
  if (given === null && unjudged?.isRead && unjudged.finding === null) round = await settledRound();
  const board = find(round);
  if (!round || !board) throw new Refusal(message('refusal.not-found', { what: 'board' }));
  const spotIndex = given ?? firstToRead(board);
  if (spotIndex === null) throw new Refusal(message('refusal.board-done', { boardCode: board.code }));
  const at = { boardId, spotIndex };
  const isKnown = !board.isRead || round.probed?.boardId === boardId;
  const known = isKnown ? Promise.resolve(round) : settledRound();
  sending.add(at);
  const next = { boardId, spotIndex: firstToRead(board, spotIndex + 1) };
  moveOn(at, next);
  try {
    await move(known.then((now) => send({ ...at, newestReadingId: newestAt(now, at) })));
  } catch (error) {
    sending.delete(at);
    if (isSame(useRound.getState().round?.aim ?? null, next)) follow({ roundId: round.id, aim: at });
    throw error;
  } finally {
    sending.delete(at);
  }
}

/** Aims on screen at the one spot where it is at the other. */
function moveOn(from: Aim, to: Aim): void {
  useRound.setState(({ round }) =>
    round && isSame(round.aim, from) ? { round: { ...round, aim: to } } : {},
  );
}

/** Aims at the next spot to read, and leaves one open whose value was not saved. */
export function goOnFrom(at: Aim & { spotIndex: number }): Aim {
  const { boardId, spotIndex } = at;
  const board = useRound.getState().round?.boards.find((each) => each.boardId === boardId);
  const next = board && spotsToRead(board, spotIndex).find((spot) => spot !== spotIndex);
  const aim = { boardId, spotIndex: next ?? null };
  if (next === undefined) moveOn(at, aim);
  else void aimAt(boardId, next);
  return aim;
}

/** Saves the live value where the window aims, or offers to replace the reading that these pins were saved as. */
export const saveLive = () =>
  inRound(async (round) => {
    const { insertion } = useMeter.getState();
    if (insertion?.roundId === round.id) {
      useRound.setState({ offersReplacing: true });
      return;
    }
    if (round.aim === null) return;
    await saveAt(round.aim, (at) => bridge().command('rounds.saveLive', { roundId: round.id, ...at }));
  });

/** Saves the live value in place of the reading that these pins were saved as. */
export const replaceByLive = ({ roundId, boardId, spotIndex, readingId }: InsertionReading) =>
  inRound(() => {
    const at = { roundId, boardId, spotIndex, newestReadingId: readingId, replaces: readingId };
    return bridge().command('rounds.saveLive', at);
  });

/** Takes what was typed out of the field while it is being saved; where it was not saved, it is there again. */
async function sendDraft(draft: Draft, send: () => Promise<unknown>): Promise<void> {
  dropDraft(draft);
  try {
    await send();
  } catch (error) {
    keepDraft({ ...draft, isSent: true });
    throw error;
  }
}

/** Saves a typed value at the spot it was typed for, or at the one that the person chose for it. */
export const saveTyped = (raw: number, draft: Draft, { boardId, spotIndex }: Aim = draft) =>
  inRound(({ id: roundId }) =>
    sendDraft(draft, () =>
      saveAt({ boardId, spotIndex }, (at) => bridge().command('rounds.saveTyped', { roundId, raw, ...at })),
    ),
  );

/** Saves a value in place of a reading at the same spot. */
export const replaceByTyped = (raw: number, { boardId, spotIndex, id }: JudgedReading, draft?: Draft) =>
  inRound(async ({ id: roundId }) => {
    if (spotIndex === null) return;
    const at = { roundId, boardId, spotIndex, newestReadingId: id, replaces: id };
    const send = () => bridge().command('rounds.saveTyped', { ...at, raw });
    await (draft ? sendDraft(draft, send) : send());
  });

/** Excludes the newest reading of the board aimed at, what is being saved included. */
export const undoLast = () =>
  inRound(async () => {
    const round = await settledRound();
    const last = newestOf(round && probedOf(round));
    if (!last) return;
    await withdraw(last, () => bridge().command('rounds.undo', { readingId: last.id }));
    const undone = { depth: last.spot.depth, reading: shown(last) };
    useRound.setState({ done: message('round.undone', undone) });
  });

export const exclude = (reading: JudgedReading, why: Exclusion) =>
  inRound(async () => {
    await withdraw(reading, () => bridge().command('readings.exclude', { readingId: reading.id, why }));
    const done = { depth: reading.spot.depth, reading: shown(reading) };
    useRound.setState({ done: message('round.excluded', done) });
  });

/** Excludes a reading. The spot that it leaves open is aimed at on screen at once: what is typed next is for that one. */
async function withdraw(
  { id, boardId, spotIndex }: JudgedReading,
  send: () => Promise<unknown>,
): Promise<void> {
  const { round } = useRound.getState();
  const others = round?.probed?.assessment?.readings.filter(
    (each) => each.id !== id && each.excluded === null,
  );
  const leavesOpen = round?.aim?.boardId === boardId && !others?.some((each) => each.spotIndex === spotIndex);
  const [from, to] = [round?.aim ?? null, { boardId, spotIndex }];
  if (from && leavesOpen) moveOn(from, to);
  try {
    await move(send());
  } catch (error) {
    if (from && leavesOpen) moveOn(to, from);
    throw error;
  }
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

/** Lets the finished round take readings again, in this window too. */
export function reopenRound(): Promise<void> {
  return inRound(async (round) => {
    await bridge().command('rounds.reopen', { roundId: round.id });
    await openRound(round.id);
  });
}

export function finishRound(): Promise<void> {
  return inRound(async (round) => {
    await bridge().command('rounds.finish', { roundId: round.id });
    await refreshRound(round.id);
  });
}
