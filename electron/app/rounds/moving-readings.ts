import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ReadingsMoved } from '../../../shared-core/contract/requests/meters.ts';
import { firstOpenSpot } from '../../../shared-core/contract/round.ts';
import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import { PAIRS, usualBasis } from '../../../shared-core/probing/readings/plan-basis.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import {
  type BoardToPlan,
  isSameSpot,
  planSpots,
  spotAt,
} from '../../../shared-core/probing/readings/spots.ts';
import { ohmsOfMegohms } from '../../../shared-core/units/typed-ohms.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { ToCorrect } from '../../store/meter-corrections.ts';
import { unitOf } from '../../store/meter-table.ts';
import type { ReadingOwnerRow } from '../../store/reading-table.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import { inSlices, type Slices } from '../slices.ts';
import type { Aims } from './aims.ts';
import type { OpenRounds } from './open-rounds.ts';
import type { PlanBases } from './plan-bases.ts';
import type { RoundTelling } from './round-telling.ts';

/** Readings of a round for which something holds, excluded ones too. */
export function* inRound(
  { readings }: Pick<YardReader, 'readings'>,
  roundId: number,
  holds: (reading: Reading) => boolean,
): Slices<Reading[]> {
  const found: Reading[] = [];
  yield* inSlices(readings.boardsWalked(roundId), (slice) => {
    for (const boardId of slice) found.push(...readings.takenOn(boardId, roundId).filter(holds));
  });
  return found;
}

/**
 * The raw value of a reading in the unit of a meter; null where its unit is another. What was typed before a meter had a
 * name is the number that its display showed, whatever that turns out to be.
 */
export function rawIn(unit: ReadingUnit, { raw, unit: own, how, meterProfileId }: Reading): number | null {
  if (own === unit) return raw;
  return how === 'typed' && meterProfileId === null && unit === 'ohm' ? ohmsOfMegohms(raw) : null;
}

const boardsOf = (readings: readonly ReadingOwnerRow[]): number[] => [
  ...new Set(readings.map(({ boardId }) => boardId)),
];

/** The number that the same spot has in another plan of the board; as it is where that plan has no such spot. */
function renumbered(before: BoardToPlan, now: BoardToPlan): (spotIndex: number | null) => number | null {
  const [were, are] = [planSpots(before).plan, planSpots(now).plan];
  return (spotIndex) => {
    const was = spotIndex === null ? undefined : were[spotIndex];
    const index = was === undefined ? -1 : are.findIndex((spot) => isSameSpot(was, spot));
    return index === -1 ? spotIndex : index;
  };
}

/** Readings that were moved so far: how many, and of which boards and rounds. */
interface MovedSoFar {
  readings: number;
  boardIds: Set<number>;
  roundIds: Set<number>;
}

const noneMoved = (): MovedSoFar => ({ readings: 0, boardIds: new Set(), roundIds: new Set() });

function add(so: MovedSoFar, some: readonly ReadingOwnerRow[]): void {
  so.readings += some.length;
  for (const { boardId, roundId } of some) {
    so.boardIds.add(boardId);
    so.roundIds.add(roundId);
  }
}

/** Moves readings to another version of a meter's profile, or back: what was saved of them stays as it was. */
export function createMovingReadings(
  context: AppContext,
  judging: Judging,
  comparing: Comparing,
  aims: Aims,
  openRounds: OpenRounds,
  telling: RoundTelling,
  planBases: PlanBases,
) {
  /**
   * Plans boards of a round for these pins; one whose core a person chose to reach otherwise keeps that. What was read
   * stays at its spot, which may have another number in the new plan.
   */
  function plan(roundId: number, boardIds: readonly number[], pins: Pins | null): void {
    const { amendments, boards, readings, spotPlans } = context.yard();
    const at = context.now();
    for (const boardId of boardIds) {
      const board = orRefuse(boards.get(boardId), 'board');
      const before = spotPlans.ofBoard(roundId, boardId);
      const usual = usualBasis(board.thicknessMm, pins);
      const basis = { ...usual, core: usual.faces === 'pairs' ? null : (before?.core ?? null) };
      spotPlans.give({ roundId, boardId, basis, givenAt: at });
      const numberNow = renumbered({ ...board, planBasis: before ?? PAIRS }, { ...board, planBasis: basis });
      for (const { id, spotIndex, isDamaged } of readings.takenOn(boardId, roundId)) {
        const now = numberNow(spotIndex);
        if (now !== spotIndex && now !== null && !isDamaged)
          amendments.amendReading(id, 'spotIndex', now, at);
      }
    }
  }

  /** Their boards are judged again, first those that a window has in hand. */
  function moved(all: MovedSoFar, isReplanned = false): ReadingsMoved {
    const roundIds = [...all.roundIds];
    context.afterwards(() => {
      comparing.compare(roundIds);
      for (const roundId of roundIds.filter(openRounds.find)) {
        openRounds.load(roundId);
        for (const [window, aim] of aims.inRound(roundId)) {
          judging.judgeNow(aim.boardId, roundId, (assessment) => {
            const probed = openRounds.show(roundId, aim.boardId, assessment);
            const isSpot = aim.spotIndex !== null && spotAt(probed, aim.spotIndex) !== undefined;
            if (isReplanned && !isSpot) aims.move(window, { ...aim, spotIndex: firstOpenSpot(probed) });
            telling.tellWindow(window, probed, null);
          });
          telling.tellOutdated(window, roundId, null);
        }
      }
    });
    return { act: context.yard().acts.now(), readings: all.readings, boardIds: [...all.boardIds], roundIds };
  }

  /** Gives readings another version of a meter's profile. @returns those of which it is another */
  function give(found: readonly Reading[], to: (reading: Reading) => number | null): ReadingOwnerRow[] {
    const { amendments } = context.yard();
    const toMove = found
      .map((reading) => ({ reading, profileId: to(reading) }))
      .filter(({ reading, profileId }) => reading.meterProfileId !== profileId && !reading.isDamaged);
    for (const { reading, profileId } of toMove)
      amendments.amendReading(reading.id, 'meterProfileId', profileId, context.now());
    const owners = toMove.map(({ reading: { id, boardId, roundId } }) => ({ id, boardId, roundId }));
    judging.judgeAgain(boardsOf(owners));
    return owners;
  }

  return {
    /** Each to the version that says what its own does, and corrects values by `off`. */
    *corrected(asked: readonly ToCorrect[]): Slices<ReadingsMoved> {
      const { readings, meters } = context.yard();
      const offOf = new Map(asked.map(({ id, off }) => [id, off]));
      const to = ({ id, meterProfileId }: Reading): number | null =>
        meterProfileId === null ? null : meters.versionWithOff(meterProfileId, offOf.get(id)!, context.now());
      const all = noneMoved();
      yield* inSlices(asked, (slice) => {
        const found = slice.map(({ id }) => orRefuse(readings.get(id), 'reading'));
        add(all, give(found, to));
      });
      return moved(all);
    },

    /** @param amend  writes what a person corrected of a reading */
    *amended(asked: readonly ReadingOwnerRow[], amend: (readingId: number) => void): Slices<ReadingsMoved> {
      const all = noneMoved();
      yield* inSlices(asked, (slice) => {
        for (const { id } of slice) amend(id);
        judging.judgeAgain(boardsOf(slice));
        add(all, slice);
      });
      return moved(all);
    },

    inRound: (roundId: number, holds: (reading: Reading) => boolean): Slices<Reading[]> =>
      inRound(context.yard(), roundId, holds),

    /**
     * To the meter's newest profile.
     * @param answeredIn the round in which it was said how long its pins are: boards planned for pins of unknown length
     *                   follow those, also the one in hand and those read in part
     * @param keepsOff   each reading stays corrected by what it was corrected by after a check
     */
    *toMeter(
      asked: readonly ReadingOwnerRow[],
      meterId: number,
      answeredIn: number | null = null,
      keepsOff = false,
    ): Slices<ReadingsMoved> {
      const { readings, meters, spotPlans } = context.yard();
      const meter = orRefuse(meters.get(meterId), 'meter');
      const newestId = meters.profileIdOf(meterId);
      const unit = unitOf(meter);
      const to = ({ meterProfileId }: Reading): number | null => {
        const off = meterProfileId === null ? undefined : meters.version(meterProfileId)?.off;
        if (!keepsOff || off === undefined || off === meter.off) return newestId;
        return newestId === null ? null : meters.versionWithOff(newestId, off, context.now());
      };
      const all = noneMoved();
      yield* inSlices(asked, (slice) => {
        const found = slice.map(({ id }) => orRefuse(readings.get(id), 'reading'));
        if (found.some((reading) => !reading.isDamaged && rawIn(unit, reading) === null)) {
          throw new Refusal(message('refusal.meter-other-unit', { meterName: meter.name }));
        }
        add(all, give(found, to));
      });
      const pins = meter.profile?.pins ?? null;
      if (answeredIn === null || pins?.lengthMm == null) return moved(all);
      const isForAnyPins = (boardId: number): boolean => {
        const basis = spotPlans.ofBoard(answeredIn, boardId);
        return basis !== null && (basis.pins?.lengthMm ?? null) === null;
      };
      plan(answeredIn, readings.boardsWalked(answeredIn).filter(isForAnyPins), pins);
      context.afterwards(() => planBases.answered(answeredIn, pins));
      return moved(all, true);
    },
  };
}
export type MovingReadings = ReturnType<typeof createMovingReadings>;
