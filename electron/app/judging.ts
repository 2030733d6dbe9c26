import type { LatestFinding } from '../../shared-core/contract/yard.ts';
import type { Assessment } from '../../shared-core/probing/assessment.ts';
import { type BoardEvidence, judgeBoard } from '../../shared-core/probing/call.ts';
import type { BoardOfRound } from '../../shared-core/probing/judge-round.ts';
import type { RoundSuspicion } from '../../shared-core/probing/round-suspicions.ts';
import { RULES_VERSION } from '../../shared-core/probing/rules-version.ts';
import { emcOfYear } from '../../shared-core/wood/climate.ts';
import type { Corrected, ReadingUnit } from '../../shared-core/wood/corrected.ts';
import { correctReading } from '../../shared-core/wood/correction.ts';
import { createBreather } from './breather.ts';
import { type AppContext, wanted } from './context.ts';
import type { OwnFits } from './own-fits.ts';
import type { OwnThread } from './own-thread.ts';

/** The thread that holds a round's boards against each other (`round-worker.ts`): each board's doubts, in their order. */
export type RoundThread = OwnThread<BoardOfRound[], RoundSuspicion[][]>;

/**
 * Brings together what the core needs to judge a board, and keeps the cache of findings true.
 */
export function createJudging(context: AppContext, ownFits: OwnFits, roundThread: RoundThread) {
  const boardsWaiting = new Set<number>();
  const roundsWaiting = new Set<number>();
  let working = false;
  /** Raised when another yard is opened: what was begun on the one before is then let be. */
  let era = 0;
  let heard: (roundId: number, boardIds: number[]) => void = () => undefined;

  function assess(boardId: number, roundId: number): Assessment {
    return judgeBoard(evidence(boardId, roundId, true), context.yard().comparisons.doubts(roundId, boardId));
  }

  function evidence(boardId: number, roundId: number, withPrevious: boolean): BoardEvidence {
    const yard = context.yard();
    const board = wanted(yard.boards.get(boardId), 'board');
    const stack = wanted(yard.stacks.get(board.stackId), 'stack');
    const readings = yard.rounds.readings(boardId, roundId);
    const at = readings.at(-1)?.takenAt ?? wanted(yard.rounds.get(roundId), 'round').startedAt;
    const meterIds = new Set(readings.map((reading) => reading.meterId).filter((id) => id !== null));
    return {
      board: {
        thicknessMm: board.thicknessMm,
        lengthMm: board.lengthMm,
        isWoodConfirmed: yard.boards.isWoodConfirmed(boardId),
      },
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

  /** Judges boards again in all their rounds, in the background, after something that their findings rest on changed. */
  function judgeAgain(boardIds: readonly number[]): void {
    for (const id of boardIds) boardsWaiting.add(id);
    begin();
  }

  /** Holds the boards of a round against each other, in the background, and judges those anew that it has a word on. */
  function compare(roundIds: readonly number[]): void {
    for (const id of roundIds) roundsWaiting.add(id);
    begin();
  }

  function begin(): void {
    if (working || boardsWaiting.size + roundsWaiting.size === 0) return;
    working = true;
    void workThrough(era);
  }

  async function workThrough(mine: number): Promise<void> {
    const breathe = createBreather();
    try {
      while (boardsWaiting.size + roundsWaiting.size > 0) {
        await breathe();
        if (mine !== era) return;
        const [boardId] = boardsWaiting;
        const [roundId] = roundsWaiting;
        if (boardId !== undefined) {
          boardsWaiting.delete(boardId);
          judgeAllRounds(boardId);
        } else if (roundId !== undefined) {
          roundsWaiting.delete(roundId);
          await compareRound(roundId, breathe, mine);
        }
      }
    } catch (error) {
      if (mine !== era) return;
      // What is left is taken up when the yard is opened again: it is still of the old rules, or not settled.
      boardsWaiting.clear();
      roundsWaiting.clear();
      context.reportFault(error);
    }
    working = false;
    context.emit('yard.changed', {});
  }

  function judgeAllRounds(boardId: number): void {
    const { rounds, comparisons } = context.yard();
    for (const roundId of rounds.roundsOfBoard(boardId)) {
      judge(boardId, roundId);
      comparisons.unsettle(roundId);
      roundsWaiting.add(roundId);
    }
  }

  async function compareRound(roundId: number, breathe: () => Promise<void>, mine: number): Promise<void> {
    const { boards, comparisons, rounds } = context.yard();
    comparisons.begin(roundId);
    const walked = rounds.boardsWalked(roundId);
    const given: BoardOfRound[] = [];
    for (const boardId of walked) {
      given.push({
        code: wanted(boards.get(boardId), 'board').code,
        evidence: evidence(boardId, roundId, true),
      });
      await breathe();
      if (mine !== era) return;
    }
    const found = await roundThread.ask(given);
    if (mine !== era) return;
    const before = comparisons.boardsInDoubt(roundId);
    const now = walked.filter((_, index) => (found[index] ?? []).length > 0);
    for (const boardId of new Set([...before, ...now])) {
      comparisons.put(roundId, boardId, found[walked.indexOf(boardId)] ?? []);
      judge(boardId, roundId);
    }
    if (!comparisons.settle(roundId, RULES_VERSION)) roundsWaiting.add(roundId);
    heard(roundId, [...new Set([...before, ...now])]);
  }

  /** Takes up what was left undone when the yard was last open, or was done by older rules. */
  function takeUp(): void {
    const { boards, comparisons } = context.yard();
    judgeAgain(boards.idsWithoutFinding(RULES_VERSION));
    compare(comparisons.unsettled(RULES_VERSION));
  }

  /** Lets everything that waits be, when another yard is opened. */
  function leave(): void {
    era++;
    working = false;
    boardsWaiting.clear();
    roundsWaiting.clear();
  }

  return {
    assess,
    correct,
    judge,
    judgeAgain,
    compare,
    takeUp,
    leave,
    /** Called with the boards whose doubts a comparison of the round may have changed. */
    whenCompared: (listener: typeof heard): void => {
      heard = listener;
    },
  };
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
