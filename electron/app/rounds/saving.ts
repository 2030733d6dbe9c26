import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ReadingOwner } from '../../../shared-core/contract/requests/rounds.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import type { ProbeTemp, Reading } from '../../../shared-core/probing/readings/reading.ts';
import { spotAt } from '../../../shared-core/probing/readings/spots.ts';
import { isReadFrozen } from '../../../shared-core/probing/suspicions/suspicion.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import type { LiveValue } from '../meter/live-values.ts';
import type { MeterHolder } from '../meter/meter-holder.ts';
import { createSignal } from '../signal.ts';
import type { Aims } from './aims.ts';
import type { Insertion } from './insertion.ts';
import { checkIsHere } from './moved-away.ts';
import type { OpenRounds } from './open-rounds.ts';
import type { RoundClock } from './round-clock.ts';
import type { RoundTelling } from './round-telling.ts';
import { saveReading } from './save-reading.ts';

/** Where a reading goes: nothing of it is guessed from where a window aims. */
export interface ReadingSpot {
  roundId: number;
  boardId: number;
  spotIndex: number;
  /** The reading of that spot that it takes the place of. */
  replaces?: number | undefined;
}
export type ReadingValue = Pick<Reading, 'raw' | 'unit' | 'how' | 'settled' | 'meterId'> & {
  isAbove?: true | undefined;
};

/** What the meter shows, as a reading. @throws Refusal with the pins out, and of a meter that is to be confirmed */
export function liveReading(live: LiveValue | null, how: 'settled' | 'at-once'): ReadingValue {
  if (live === null || live.value === null) throw new Refusal(message('refusal.no-value'));
  if (live.isUnconfirmed) throw new Refusal(message('refusal.meter-unconfirmed'));
  const { value: raw, unit, phase, meterId } = live;
  return { raw, unit, how, settled: phase === 'settled', meterId };
}

/** Saves readings, and excludes them. What a reading amounts to, and what windows hear of it, comes once it is on disk. */
export function createSaving(
  context: AppContext,
  judging: Judging,
  comparing: Comparing,
  holder: MeterHolder,
  aims: Aims,
  openRounds: OpenRounds,
  telling: RoundTelling,
  insertion: Insertion,
  clock: RoundClock,
  probeTemp: () => ProbeTemp | null,
) {
  const filled = createSignal<{ window: string; at: ReadingSpot }>();

  function ownerOf(roundId: number, boardId: number): ReadingOwner {
    const { stackId } = orRefuse(context.yard().rounds.get(roundId), 'round');
    return { roundId, boardId, stackId };
  }

  const readingsAt = ({ roundId, boardId, spotIndex }: ReadingSpot): Reading[] =>
    context
      .yard()
      .readings.ofBoard(boardId, roundId)
      .filter((reading) => reading.spotIndex === spotIndex && reading.excluded === null);

  /**
   * Saves a reading if the spot is as the window shows it, so that two windows, or a person and the meter, never fill
   * one spot twice.
   * @throws Refusal
   */
  function saveAsShown(
    window: string,
    { newestReadingId, ...at }: ReadingSpot & { newestReadingId: number | null },
    value: ReadingValue,
  ): ReadingOwner {
    const { code } = openRounds.board(at.roundId, at.boardId);
    const here = readingsAt(at);
    const isAsShown =
      at.replaces === undefined
        ? (here.at(-1)?.id ?? null) === newestReadingId
        : here.some(({ id }) => id === at.replaces);
    if (!isAsShown) throw new Refusal(message('refusal.spot-changed', { boardCode: code }));
    return save(window, at, value);
  }

  function save(window: string, at: ReadingSpot, value: ReadingValue): ReadingOwner {
    const { roundId, boardId, spotIndex, replaces } = at;
    const board = openRounds.board(roundId, boardId);
    const { spot, by } = orRefuse(spotAt(board, spotIndex), 'spot');
    const { amendments, rounds, spotPlans } = context.yard();
    const now = context.now();
    if (replaces !== undefined) amendments.exclude('reading', replaces, { code: 'replaced' }, now);
    const round = orRefuse(rounds.get(roundId), 'round');
    const takenAt = round.datedBy === 'day' ? round.startedAt : clock.now(round);
    const { planBasis } = board;
    // What a person gave for this board holds, whatever a probe says.
    const measured = board.ownTemp || round.datedBy === 'day' ? null : probeTemp();
    const woodTempC = measured?.tempC ?? board.woodTempC;
    // From here on the board keeps its plan, whatever meter is used.
    if (!board.isRead) spotPlans.give({ roundId, boardId, basis: planBasis, givenAt: now });
    const reading = { roundId, boardId, spotIndex, spot, woodTempC, takenAt, ...value };
    const readingId = saveReading(context.yard(), reading, now);
    // They are not the pins of the meter's profile: the person chose them, to go that deep.
    if (by === 'long-pins' && spot.depthMm !== null)
      amendments.amendReading(readingId, 'depthMm', spot.depthMm, now);
    if (measured !== null) amendments.amendReading(readingId, 'probe', measured, now);
    judgeLaterRounds(boardId, roundId);
    context.afterwards(() => {
      if (replaces !== undefined) insertion.free(replaces);
      // What another window types is no reading of these pins.
      if (value.how !== 'typed' || holder.window() === window) {
        insertion.take({ readingId, roundId, boardId, spotIndex }, value);
      }
      filled.give({ window, at });
      showSaved(window, at, readingId);
    });
    return ownerOf(roundId, boardId);
  }

  /** Within the act: what rests on a round that is over, or on one before others, is judged again in the background. */
  function judgeLaterRounds(boardId: number, roundId: number): void {
    const { readings, rounds } = context.yard();
    const isOver = rounds.get(roundId)?.finishedAt != null;
    if (isOver || readings.roundsOfBoard(boardId).at(-1) !== roundId) judging.judgeAgain([boardId]);
  }

  /** Judges the board, and aims the window at the next spot, unless it aims elsewhere by now. */
  function showSaved(window: string, at: ReadingSpot, readingId: number): void {
    let next: number | null = null;
    judging.judgeNow(at.boardId, at.roundId, (assessment) => {
      next = showNext(window, at, readingId, assessment);
    });
    // A board half read says little of the round; one that is done may say that another is not what it seems.
    if (next === null) comparing.compareSoon(at.roundId);
  }

  /** @returns the next spot of the board; null where all are read */
  function showNext(
    window: string,
    { roundId, boardId, spotIndex }: ReadingSpot,
    readingId: number,
    assessment: Assessment,
  ): number | null {
    const after = openRounds.show(roundId, boardId, assessment);
    const readings = after.assessment?.readings ?? [];
    const saved = readings.find(({ id }) => id === readingId);
    // A refused reading leaves its spot to be read again; frozen wood is to thaw first, and other spots may be drier.
    const isToReadAgain = saved !== undefined && !saved.counts && !isReadFrozen(saved);
    const read = readings.map((each) => (isReadFrozen(each) ? { ...each, counts: true } : each));
    const next = isToReadAgain ? spotIndex : openSpot(after, read, spotIndex + 1);
    const aim = aims.of(window);
    const at = aim?.roundId === roundId ? aim : aims.leftIn(roundId, window);
    if (at === null || (at.boardId === boardId && at.spotIndex === spotIndex))
      aims.move(window, { roundId, boardId, spotIndex: next });
    telling.tell(roundId, after, { window, readingId });
    return next;
  }

  /** Excludes a reading, or includes it again where `why` is null. */
  function exclude(readingId: number, why: Exclusion | null): ReadingOwner {
    const reading = orRefuse(context.yard().readings.get(readingId), 'reading');
    const { roundId, boardId } = reading;
    checkIsHere(context, reading);
    context.yard().amendments.exclude('reading', readingId, why, context.now());
    judgeLaterRounds(boardId, roundId);
    context.afterwards(() => {
      if (why !== null) insertion.free(readingId);
      comparing.compare([roundId]);
      judging.judgeNow(boardId, roundId, (assessment) => {
        if (openRounds.find(roundId)) telling.tell(roundId, openRounds.show(roundId, boardId, assessment));
      });
    });
    return ownerOf(roundId, boardId);
  }

  return {
    save,
    saveAsShown,
    exclude,
    /** A spot got a reading, by whichever window. */
    filled,
  };
}
export type Saving = ReturnType<typeof createSaving>;
