import { newestOf, probedOf } from '../../shared-core/contract/round.ts';
import type { GivenExclusion } from '../../shared-core/probing/readings/exclusion.ts';
import type { JudgedReading } from '../../shared-core/probing/readings/reading.ts';
import { shown } from '../../shared-core/probing/suspicions/reading-suspicions.ts';
import { message } from '../../shared-core/words/message.ts';
import { bridge } from '../data/bridge.ts';
import { inRound, useRound } from './round.ts';
import { move, moveOn, settledRound } from './round-aim.ts';

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

/** Excludes a reading, and says so. */
export const exclude = (reading: JudgedReading, why: GivenExclusion) =>
  inRound(async () => {
    await withdraw(reading, () => bridge().command('readings.exclude', { readingId: reading.id, why }));
    const done = { depth: reading.spot.depth, reading: shown(reading) };
    useRound.setState({ done: message('round.excluded', done) });
  });

/** Includes an excluded reading again. */
export const include = (readingId: number) =>
  inRound(() => bridge().command('readings.include', { readingId }));
