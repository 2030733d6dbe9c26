import type {
  LastRound,
  ProbedBoard,
  RoundBoard,
  RoundFinding,
  RoundState,
  RoundSummary,
} from '../../../shared-core/contract/round.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { asJudged } from '../../../shared-core/probing/calls/judgement.ts';
import { summarizeRound } from '../../../shared-core/probing/calls/round-summary.ts';
import { isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import { PAIRS } from '../../../shared-core/probing/readings/plan-basis.ts';
import { type BoardToPlan, isSameSpot, planSpots } from '../../../shared-core/probing/readings/spots.ts';
import type { BoardToProbe } from '../../store/board-table.ts';
import type { RoundRow } from '../../store/round-table.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Assessing } from '../judging/assessing.ts';
import { findingOf } from '../judging/finding.ts';
import { type PlanBases, usualCoreWayOf } from './plan-bases.ts';

/** What the window shows of a round, from what is on disk. */
export function createRoundView(context: QueryContext, assessing: Assessing, planBases: PlanBases) {
  /**
   * One board with every reading of it.
   * @param judged what the board's readings were just found to amount to, if they were: newer than its forecast
   */
  function board(roundId: number, boardId: number, judged?: Assessment): ProbedBoard {
    const { boards, findings, woodTemperatures } = context.yard();
    const assessment = judged ?? assessing.assess(boardId, roundId);
    const row = orRefuse(boards.get(boardId), 'board');
    const isRead = assessment.readings.some(({ excluded }) => !isSlip(excluded));
    const planBasis = planBases.of(context.yard(), {
      roundId,
      boardId,
      thicknessMm: row.thicknessMm,
      isRead,
    });
    const planned = { ...row, planBasis };
    const own = woodTemperatures.ofBoard(roundId, boardId);
    const found = findingOf(roundId, planned, assessment);
    return {
      ...shown(planned, own, woodTemperatures.ofRound(roundId)),
      isRead,
      isReadSince: isRead && findings.isReadSince(boardId, roundId),
      finding: judged ? found : called(row, found),
      assessment: assessment.readings.length > 0 ? assessment : null,
      lastRound: lastRound(roundId, boardId, planned),
    };
  }

  function lastRound(roundId: number, boardId: number, board: BoardToPlan): LastRound | null {
    const { readings, spotPlans } = context.yard();
    const before = readings.roundBefore(boardId, roundId);
    if (before === undefined) return null;
    const found = assessing.finding(boardId, before);
    if (found === null) return null;
    const planBefore = planSpots({ ...board, planBasis: spotPlans.ofBoard(before, boardId) ?? PAIRS }).plan;
    const spotPcts = planSpots(board).plan.map((now) => {
      const index = planBefore.findIndex((was) => isSameSpot(was, now));
      return found.spotPcts[index] ?? null;
    });
    return { at: found.at, spotPcts };
  }

  /**
   * Every board of the stack that is where the round is, as it is walked. Once the round is finished, also those that left
   * after they were read, and none that were added later.
   */
  function boards({ id: roundId, stackId, placeId, finishedAt, lastBoardId }: RoundRow): RoundBoard[] {
    const yard = context.yard();
    // A thousand boards in a few questions, not in thousands: a person waits for this.
    const ofRound = yard.woodTemperatures.ofRound(roundId);
    const ownTemps = yard.woodTemperatures.ofBoards(roundId);
    const findings = assessing.findings(roundId);
    const here = yard.boards.toProbe(stackId, placeId, finishedAt === null ? null : (lastBoardId ?? 0));
    const read = finishedAt === null ? [] : yard.boards.readInRound(roundId);
    const all = new Map([...here, ...read].map((each) => [each.id, each]));
    const basisOf = planBases.inRound(yard, roundId);
    const readSince = new Set(yard.findings.readSince(roundId));
    return [...all.values()].map((each) => {
      const { id: boardId, thicknessMm } = each;
      const isRead = findings.has(boardId);
      const planBasis = basisOf({ roundId, boardId, thicknessMm, isRead });
      return {
        ...shown({ ...each, planBasis }, ownTemps.get(boardId), ofRound),
        isRead,
        isReadSince: readSince.has(boardId),
        finding: findings.get(boardId) ?? null,
      };
    });
  }

  function state(roundId: number): Omit<RoundState, 'aim' | 'probed'> {
    const yard = context.yard();
    const round = orRefuse(yard.rounds.shown(roundId), 'round');
    const stack = orRefuse(yard.stacks.get(round.stackId), 'stack');
    const all = boards(round);
    return {
      id: round.id,
      version: round.version,
      stackId: stack.id,
      stackName: stack.name,
      placeName:
        yard.moves.placeOfRound(roundId) ??
        (round.placeId === null ? stack.placeName : orRefuse(yard.places.get(round.placeId), 'place').name),
      placeId: round.placeId ?? stack.placeId,
      endUseName: stack.endUseName,
      usualCoreWay: usualCoreWayOf(yard, round.id),
      startedAt: round.startedAt,
      isDated: round.datedBy === 'day',
      finishedAt: round.finishedAt,
      woodTempC: yard.woodTemperatures.ofRound(roundId),
      lastMeterId: yard.readings.lastMeterOf(roundId),
      boards: all,
      summary: summaryOf(all),
      updating: yard.findings.updatingIn(roundId),
    };
  }

  /** As much of that as forecasts change: what is found of boards that were read, and how many wait for one. */
  const found = (roundId: number) => ({
    findings: assessing.findings(roundId),
    updating: context.yard().findings.updatingIn(roundId),
  });

  return { board, state, found };
}
export type RoundView = ReturnType<typeof createRoundView>;

export const summaryOf = (boards: readonly RoundBoard[]): RoundSummary =>
  summarizeRound(
    boards.map(({ isRead, finding }) => {
      if (!isRead) return null;
      return finding === null ? 'being-judged' : (finding.call ?? 'half-probed');
    }),
  );

/** A finding with the call of today, as every list has it, where no other round makes that. */
const called = (
  { latest, outlook, judgement }: BoardRow,
  finding: RoundFinding | null,
): RoundFinding | null =>
  finding && outlook && latest?.roundId === finding.roundId ? asJudged(finding, judgement) : finding;

/** @param own the board's own wood temperature in this round; undefined where nothing was said of it alone */
function shown(
  {
    id,
    code,
    speciesName,
    thicknessMm,
    thicknessQuarters,
    lengthMm,
    planBasis,
  }: BoardToProbe & Pick<RoundBoard, 'planBasis'>,
  own: number | null | undefined,
  ofRound: number | null,
): Omit<RoundBoard, 'isRead' | 'isReadSince' | 'finding'> {
  return {
    boardId: id,
    code,
    speciesName,
    thicknessMm,
    thicknessQuarters,
    lengthMm,
    planBasis,
    woodTempC: own === undefined ? ofRound : own,
    ownTemp: own !== undefined,
  };
}
