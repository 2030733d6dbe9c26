import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ReadingsMoved } from '../../../shared-core/contract/requests/meters.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { ReadingOwnerRow } from '../../store/reading-table.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import type { Aims } from './aims.ts';
import type { OpenRounds } from './open-rounds.ts';
import type { RoundTelling } from './round-telling.ts';

/** The acts that only amended readings. */
const UNDONE = ['readings.setMeter', 'meters.updateEarlier', 'readings.setDepth'];

/** Readings of a round for which something holds, excluded ones too. */
export function inRound(
  { readings }: Pick<YardReader, 'readings'>,
  roundId: number,
  holds: (reading: Reading) => boolean,
): Reading[] {
  return readings
    .boardsWalked(roundId)
    .flatMap((boardId) => readings.ofBoard(boardId, roundId).filter(holds));
}

/** Moves readings to another version of a meter's profile, or back: what was saved of them stays as it was. */
export function createMovingReadings(
  context: AppContext,
  judging: Judging,
  comparing: Comparing,
  aims: Aims,
  openRounds: OpenRounds,
  telling: RoundTelling,
) {
  /** Judges the boards again, first those that a window has in hand. */
  function moved(readings: readonly ReadingOwnerRow[]): ReadingsMoved {
    const boardIds = [...new Set(readings.map(({ boardId }) => boardId))];
    const roundIds = [...new Set(readings.map(({ roundId }) => roundId))];
    judging.judgeAgain(boardIds);
    context.afterwards(() => {
      comparing.compare(roundIds);
      for (const roundId of roundIds.filter(openRounds.find)) {
        openRounds.load(roundId);
        for (const [window, { boardId }] of aims.inRound(roundId)) {
          telling.tellWindow(
            window,
            openRounds.show(roundId, boardId, judging.judgeNow(boardId, roundId)),
            null,
          );
          telling.tellOutdated(window, roundId, null);
        }
      }
    });
    return { act: context.yard().acts.now(), readings: readings.length, boardIds, roundIds };
  }

  return {
    /** Follows what was amended of readings, whatever it was. */
    amended: moved,

    inRound: (roundId: number, holds: (reading: Reading) => boolean): Reading[] =>
      inRound(context.yard(), roundId, holds),

    /** To the meter's newest profile. */
    toMeter: (all: readonly ReadingOwnerRow[], meterId: number): ReadingsMoved => {
      const { readings, meters, amendments } = context.yard();
      const meter = orRefuse(meters.get(meterId), 'meter');
      const profileId = meters.profileIdOf(meterId);
      const unit = meter.description?.unit ?? 'pct';
      const toMove = all
        .map(({ id }) => orRefuse(readings.get(id), 'reading'))
        .filter(({ meterProfileId, isDamaged }) => meterProfileId !== profileId && !isDamaged);
      if (toMove.some((reading) => reading.unit !== unit)) {
        throw new Refusal(message('refusal.meter-other-unit', { meterName: meter.name }));
      }
      for (const { id } of toMove) amendments.amendReading(id, 'meterProfileId', profileId, context.now());
      return moved(toMove);
    },

    /** Puts back what such an act changed. @throws Refusal where it was undone before, or changed since */
    undo: (act: string): ReadingsMoved => {
      const { acts, readings } = context.yard();
      orRefuse(UNDONE.includes(acts.find(act)?.request ?? '') || undefined, 'act');
      const undone = acts.undo(act, context.now());
      let came = undone.next(Number.MAX_SAFE_INTEGER);
      while (!came.done) came = undone.next(Number.MAX_SAFE_INTEGER);
      if (!came.value) throw new Refusal(message('refusal.readings-changed-since'));
      return moved(readings.amendedBy(act));
    },
  };
}
export type MovingReadings = ReturnType<typeof createMovingReadings>;
