import type { LatestFinding } from '../../shared-core/contract/yard.ts';
import type { Assessment } from '../../shared-core/probing/assessment.ts';
import { type BoardEvidence, judgeBoard } from '../../shared-core/probing/call.ts';
import { RULES_VERSION } from '../../shared-core/probing/rules-version.ts';
import { emcOfYear } from '../../shared-core/wood/climate.ts';
import type { Corrected, ReadingUnit } from '../../shared-core/wood/corrected.ts';
import { correctReading } from '../../shared-core/wood/correction.ts';
import { type AppContext, wanted } from './context.ts';
import type { OwnFits } from './own-fits.ts';

/** Boards judged again between two turns of the event loop, so that a change of a wood never holds up the window. */
const BOARDS_A_TURN = 50;

/**
 * Brings together what the core needs to judge a board, and keeps the cache of findings true.
 */
export function createJudging(context: AppContext, ownFits: OwnFits) {
  const waiting = new Set<number>();
  let working = false;

  function assess(boardId: number, roundId: number): Assessment {
    return judgeBoard(evidence(boardId, roundId, true));
  }

  function evidence(boardId: number, roundId: number, withPrevious: boolean): BoardEvidence {
    const yard = context.yard();
    const board = wanted(yard.boards.get(boardId), 'board');
    const stack = wanted(yard.stacks.get(board.stackId), 'stack');
    const readings = yard.rounds.readings(boardId, roundId);
    const at = readings.at(-1)?.takenAt ?? wanted(yard.rounds.get(roundId), 'round').startedAt;
    const meterIds = new Set(readings.map((reading) => reading.meterId).filter((id) => id !== null));
    return {
      board: { thicknessMm: board.thicknessMm, lengthMm: board.lengthMm },
      wood: wanted(yard.species.get(board.woodId), 'wood'),
      use: wanted(yard.uses.get(stack.useId), 'use'),
      place: placeAt(boardId, at),
      readings,
      meters: Object.fromEntries(
        [...meterIds].map((id) => {
          const description = yard.meters.get(id)?.description ?? null;
          const ownCalibration = ownFits.calibration(board.woodId, id);
          return [
            id,
            { basis: description?.basis ?? null, range: description?.range ?? null, ownCalibration },
          ];
        }),
      ),
      typedBasis: { basis: null, range: null, ownCalibration: ownFits.calibration(board.woodId, null) },
      previous: withPrevious ? previousFinding(boardId, roundId, at) : null,
    };
  }

  /** One live value corrected for the board it is read on. */
  function correct(live: {
    boardId: number;
    value: number;
    unit: ReadingUnit;
    woodTempC: number | null;
    meterId: number;
  }): Corrected {
    const yard = context.yard();
    const { woodId } = wanted(yard.boards.get(live.boardId), 'board');
    return correctReading({
      value: live.value,
      unit: live.unit,
      woodTempC: live.woodTempC,
      wood: wanted(yard.species.get(woodId), 'wood'),
      basis: yard.meters.get(live.meterId)?.description?.basis ?? null,
      ownCalibration: ownFits.calibration(woodId, live.meterId),
    });
  }

  /** Where the board stood at that instant, with the EMC of that month's air. */
  function placeAt(boardId: number, at: string): BoardEvidence['place'] {
    const yard = context.yard();
    const moves = yard.boards.moves(boardId);
    const move = moves.findLast((each) => each.since <= at) ?? moves[0];
    const place = wanted(yard.places.get(wanted(move, 'move').placeId), 'place');
    const month = new Date(at).getMonth();
    return {
      name: place.name,
      kind: place.kind,
      emcPct: emcOfYear(place.air).monthlyEmcPct[month] ?? null,
      airTempC: place.air[month]?.tempC ?? null,
    };
  }

  function previousFinding(boardId: number, roundId: number, at: string): BoardEvidence['previous'] {
    const before = context
      .yard()
      .rounds.roundsOfBoard(boardId)
      .filter((id) => id < roundId)
      .at(-1);
    if (before === undefined) return null;
    const { estimate, readings } = judgeBoard(evidence(boardId, before, false));
    const takenAt = readings.at(-1)?.takenAt;
    if (estimate === null || takenAt === undefined) return null;
    const moved = context
      .yard()
      .boards.moves(boardId)
      .some(({ since }) => since > takenAt && since <= at);
    return { estimate, takenAt, moved };
  }

  /** Judges a board's readings of one round and keeps what was found for lists and labels. */
  function judge(boardId: number, roundId: number): Assessment {
    const assessment = assess(boardId, roundId);
    const at = assessment.readings.at(-1)?.takenAt;
    if (at === undefined) {
      context.yard().boards.dropFinding(boardId, roundId);
    } else {
      context.yard().boards.putFinding(boardId, findingOf(roundId, at, assessment), RULES_VERSION);
    }
    return assessment;
  }

  /** Judges boards again in all their rounds, a few at a time, after something that their findings rest on changed. */
  function judgeAgain(boardIds: readonly number[]): void {
    for (const id of boardIds) waiting.add(id);
    if (!working && waiting.size > 0) {
      working = true;
      setImmediate(judgeSome);
    }
  }

  function judgeSome(): void {
    try {
      for (const boardId of [...waiting].slice(0, BOARDS_A_TURN)) {
        waiting.delete(boardId);
        for (const roundId of context.yard().rounds.roundsOfBoard(boardId)) judge(boardId, roundId);
      }
    } catch (error) {
      // What is left is judged when the yard is opened again: its findings are still of the old rules or gone.
      waiting.clear();
      context.reportFault(error);
    }
    if (waiting.size > 0) {
      setImmediate(judgeSome);
    } else {
      working = false;
      context.emit('yard.changed', {});
    }
  }

  return { assess, correct, judge, judgeAgain };
}
export type Judging = ReturnType<typeof createJudging>;

function findingOf(roundId: number, at: string, { estimate, call }: Assessment): LatestFinding {
  return {
    roundId,
    at,
    averagePct: estimate?.averagePct ?? null,
    lowPct: estimate?.lowPct ?? null,
    highPct: estimate?.highPct ?? null,
    shellPct: estimate?.shellPct ?? null,
    corePct: estimate?.corePct ?? null,
    verdict: call.verdict,
    reason: call.reasons[0] as string,
  };
}
