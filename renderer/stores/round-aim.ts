import { Refusal } from '../../shared-core/contract/answer.ts';
import type {
  Aim,
  ProbedBoard,
  RoundBoard,
  RoundChange,
  RoundState,
} from '../../shared-core/contract/round.ts';
import { firstSpot, isExtraSpot, planSpots } from '../../shared-core/probing/readings/spots.ts';
import { isReadFrozen } from '../../shared-core/probing/suspicions/suspicion.ts';
import { message } from '../../shared-core/words/message.ts';
import { bridge } from '../data/bridge.ts';
import { draftInField, leaveField } from './drafts.ts';
import { sentenceOf } from './notices.ts';
import { inRound, useRound } from './round.ts';

/** Requests on their way that move the aim; until the last is answered, the window knows the aim better. */
const moving = new Set<Promise<unknown>>();
/** What the machine told last while requests were on their way. */
let told: RoundChange | null = null;

/** Waits for a request that moves the aim, and then follows the machine. */
export async function move(request: Promise<unknown>): Promise<void> {
  moving.add(request);
  try {
    await request;
  } finally {
    moving.delete(request);
    if (moving.size === 0 && told) follow(told);
  }
}

/** Spots whose readings are on their way: they are filled as far as the window knows. */
export const sending = new Set<Aim>();

/** Whether a reading of that spot is on its way. */
export const isSending = (at: Aim): boolean => [...sending].some((each) => isSame(each, at));

/** Spots of the board aimed at that were read frozen: they are read again once the wood has thawed. */
function frozenSpots(boardId: number): (number | null)[] {
  const { round } = useRound.getState();
  if (round?.probed?.boardId !== boardId) return [];
  return (round.probed.assessment?.readings ?? []).filter(isReadFrozen).map(({ spotIndex }) => spotIndex);
}

/** The spots of a board still to be read, from one of them on and round to it again; none while that is not known. */
export function spotsToRead({ boardId, isRead, finding, ...sizes }: RoundBoard, given?: number): number[] {
  if (isRead && finding === null) return [];
  const { plan } = planSpots(sizes);
  const { length } = plan;
  const from = given ?? firstSpot(plan);
  const onTheirWay = [...sending].filter((each) => each.boardId === boardId);
  const frozen = frozenSpots(boardId);
  return Array.from({ length }, (_, index) => (from + index) % length).filter(
    (spot) =>
      typeof finding?.spotPcts[spot] !== 'number' &&
      !frozen.includes(spot) &&
      !onTheirWay.some((each) => each.spotIndex === spot),
  );
}

/** The first of `spotsToRead`; null where there is none. */
export const firstToRead = (board: RoundBoard, from?: number): number | null =>
  spotsToRead(board, from)[0] ?? null;

/** Whether one aims at the same spot as the other. */
export const isSame = (one: Aim | null, other: Aim): boolean =>
  one?.boardId === other.boardId && one.spotIndex === other.spotIndex;

/** Aims on screen where the machine does, but never away from an open spot that a number is being typed for. */
export function follow({
  roundId,
  aim,
  board,
}: Pick<RoundChange, 'roundId' | 'aim'> & { board?: ProbedBoard }): void {
  told = null;
  const { round } = useRound.getState();
  if (round?.id !== roundId || isSame(round.aim, aim)) return;
  const typed = draftInField(roundId);
  const at = round.boards.find(({ boardId }) => boardId === typed?.boardId);
  const isToRead =
    isExtraSpot(typed?.spotIndex ?? null) ||
    (at && spotsToRead(at).some((spot) => spot === typed?.spotIndex));
  if (typed && at && isSame(round.aim, typed) && isToRead) {
    const { boardId, spotIndex } = typed;
    void inRound(() => move(bridge().command('rounds.aim', { roundId, boardId, spotIndex })));
    return;
  }
  const probed = board?.boardId === aim.boardId ? board : round.probed;
  useRound.setState({ round: { ...round, aim, probed } });
}

/** Aims on screen where the machine does, once nothing is on its way that moves the aim. */
export function followWhenSettled(change: RoundChange): void {
  if (moving.size === 0) follow(change);
  else told = change;
}

/** Aims on screen at the one spot where it is at the other. */
export function moveOn(from: Aim, to: Aim): void {
  useRound.setState(({ round }) =>
    round && isSame(round.aim, from) ? { round: { ...round, aim: to } } : {},
  );
}

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

/** The round on screen once nothing is on its way that moves the aim. */
export async function settledRound(): Promise<RoundState | null> {
  await Promise.allSettled([...moving]);
  return useRound.getState().round;
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

/** The machine was asked before it knew the newest aim where one is still on its way. */
export function withNewestAim(fresh: RoundState, { id, aim, probed }: RoundState): RoundState {
  if (moving.size === 0 || fresh.id !== id || fresh.aim === null) return fresh;
  return { ...fresh, aim, probed: fresh.probed?.boardId === aim?.boardId ? fresh.probed : probed };
}
