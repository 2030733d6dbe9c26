import { Refusal } from '../../shared-core/contract/answer.ts';
import type { RequestInput } from '../../shared-core/contract/requests.ts';
import {
  type Aim,
  type InsertionReading,
  newestOf,
  type RoundState,
} from '../../shared-core/contract/round.ts';
import type { TypedReading } from '../../shared-core/labels/typed-value.ts';
import type { JudgedReading } from '../../shared-core/probing/readings/reading.ts';
import { message } from '../../shared-core/words/message.ts';
import { bridge } from '../data/bridge.ts';
import { type Draft, dropDraft, dropSent, keepDraft, unitOfDraft } from './drafts.ts';
import { isLinkLost, useLink } from './link.ts';
import { useMeter } from './meter.ts';
import { inRound, useRound } from './round.ts';
import { firstToRead, follow, isSame, isSending, move, moveOn, sending, settledRound } from './round-aim.ts';
import { typingMeterId } from './typing-meter.ts';

/** What a command that saves names beside the value. */
type SpotToSave = Omit<RequestInput<'rounds.saveLive'>, 'roundId'>;

/** The newest reading of a spot that the window shows. */
const newestAt = (round: RoundState | null, { boardId, spotIndex }: Aim): number | null =>
  (round?.probed?.boardId === boardId && newestOf(round.probed, spotIndex)?.id) || null;

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
  const isKnown = (!board.isRead || round.probed?.boardId === boardId) && !isSending(at);
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

/**
 * Saves the live value where the window aims, or offers to replace the reading that these pins were saved as.
 * @param isOtherPush  the person was asked, and says that these are other pins than those that are saved
 */
export const saveLive = (isOtherPush?: true) =>
  inRound(async (round) => {
    const { insertion } = useMeter.getState();
    if (insertion?.roundId === round.id && !isOtherPush) {
      useRound.setState({ offersReplacing: true });
      return;
    }
    if (round.aim === null) return;
    await saveAt(round.aim, (at) =>
      bridge().command('rounds.saveLive', { roundId: round.id, ...at, ...(isOtherPush && { isOtherPush }) }),
    );
  });

/** Saves the live value in place of the reading that these pins were saved as. */
export const replaceByLive = ({ roundId, boardId, spotIndex, readingId }: InsertionReading) =>
  inRound(() => {
    const at = { roundId, boardId, spotIndex, newestReadingId: readingId, replaces: readingId };
    return bridge().command('rounds.saveLive', at);
  });

const isAnswerLost = (error: unknown): boolean =>
  error instanceof Refusal && error.problem.code === 'refusal.machine-stopped';

/**
 * Takes what was typed out of the field while it is being saved. Where it was not saved, and where nobody knows because
 * the machine does not answer, it is there again, and says by itself that it is not saved.
 */
async function sendDraft(draft: Draft, send: () => Promise<unknown>): Promise<void> {
  dropDraft(draft);
  const bringBack = (): void => keepDraft({ ...draft, isSent: true });
  const unfollow = useLink.subscribe((link, before) => {
    if (isLinkLost(link) && !isLinkLost(before)) bringBack();
  });
  try {
    await send();
    dropSent(draft);
  } catch (error) {
    bringBack();
    if (!isAnswerLost(error)) throw error;
  } finally {
    unfollow();
  }
}

/** Saves a typed value at the spot it was typed for, or at the one that the person chose for it. */
export const saveTyped = (value: TypedReading, draft: Draft, { boardId, spotIndex }: Aim = draft) =>
  inRound(({ id: roundId }) =>
    sendDraft(draft, () =>
      saveAt({ boardId, spotIndex }, (at) =>
        bridge().command('rounds.saveTyped', {
          roundId,
          ...value,
          unit: unitOfDraft(draft),
          meterId: typingMeterId(),
          ...at,
        }),
      ),
    ),
  );

/** Saves a value in place of a reading at the same spot. */
export const replaceByTyped = (value: TypedReading, reading: JudgedReading, draft?: Draft) =>
  inRound(async ({ id: roundId }) => {
    const { boardId, spotIndex, id, unit, meterId } = reading;
    if (spotIndex === null) return;
    const at = { roundId, boardId, spotIndex, newestReadingId: id, replaces: id };
    // What was meant by a slip was read off the same meter.
    const meter = draft ? { unit: unitOfDraft(draft), meterId: typingMeterId() } : { unit, meterId };
    const send = () => bridge().command('rounds.saveTyped', { ...at, ...value, ...meter });
    await (draft ? sendDraft(draft, send) : send());
  });
