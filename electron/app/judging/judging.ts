import type { RoundFinding } from '../../../shared-core/contract/round.ts';
import type { Move } from '../../../shared-core/contract/yard.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { BoardEvidence } from '../../../shared-core/probing/calls/evidence.ts';
import { RULES_VERSION } from '../../../shared-core/probing/calls/rules-version.ts';
import type { BoardOfRound } from '../../../shared-core/probing/suspicions/judge-round.ts';
import type { RoundSuspicion } from '../../../shared-core/probing/suspicions/round-suspicions.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import type { Corrected, ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import type { Yard } from '../../store/yard.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { OwnThread } from '../own-thread.ts';
import { createBacklog } from './backlog.ts';
import { findingOf } from './finding.ts';
import type { OwnFits } from './own-fits.ts';

/** The thread that holds a round's boards against each other (`round-worker.ts`): each board's doubts, in their order. */
export type RoundThread = OwnThread<BoardOfRound[], RoundSuspicion[][]>;

/** A person waits for no more boards than this to be judged; more are judged in the background. */
const MOST_JUDGED_AT_ONCE = 20;

/** What every round of a board is judged by. */
interface KnownBoard {
  boardId: number;
  facts: NonNullable<ReturnType<Yard['boards']['judgedBy']>>;
  moves: readonly Move[];
}

/**
 * Brings together what the core needs to judge a board, and keeps the cache of findings true.
 */
export function createJudging(context: AppContext, ownFits: OwnFits, roundThread: RoundThread) {
  let heard: (roundId: number, boardId: number, assessment: Assessment) => void = () => undefined;

  function assess(boardId: number, roundId: number): Assessment {
    return assessKnown(knownBoard(boardId), roundId);
  }

  function assessKnown(known: KnownBoard, roundId: number): Assessment {
    const evidence = evidenceOf(known, roundId, true);
    return judgeBoard(evidence, context.yard().comparisons.suspicions(roundId, known.boardId));
  }

  function knownBoard(boardId: number): KnownBoard {
    const { boards, moves } = context.yard();
    return { boardId, facts: orRefuse(boards.judgedBy(boardId), 'board'), moves: moves.ofBoard(boardId) };
  }

  function evidenceOf(known: KnownBoard, roundId: number, withPrevious: boolean): BoardEvidence {
    const yard = context.yard();
    const { speciesId, endUseId, thicknessMm, lengthMm, isSpeciesConfirmed } = known.facts;
    const readings = yard.readings.ofBoard(known.boardId, roundId);
    const at = readings.at(-1)?.takenAt ?? orRefuse(yard.rounds.get(roundId), 'round').startedAt;
    const meterIds = new Set(readings.map((reading) => reading.meterId).filter((id) => id !== null));
    return {
      board: { thicknessMm, lengthMm, isSpeciesConfirmed },
      species: orRefuse(yard.species.get(speciesId), 'species'),
      endUse: orRefuse(yard.endUses.get(endUseId), 'use'),
      place: placeAt(known.moves, at),
      readings,
      meters: Object.fromEntries(
        [...meterIds].map((id) => {
          const description = yard.meters.get(id)?.description ?? null;
          const ownCalibration = ownFits.calibration(speciesId, id);
          return [
            id,
            { basis: description?.basis ?? null, range: description?.range ?? null, ownCalibration },
          ];
        }),
      ),
      typedBasis: { basis: null, range: null, ownCalibration: ownFits.calibration(speciesId, null) },
      previous: withPrevious ? previousFinding(known, roundId, at) : null,
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
    const { speciesId } = orRefuse(yard.boards.get(live.boardId), 'board');
    return correctReading({
      value: live.value,
      unit: live.unit,
      woodTempC: live.woodTempC,
      species: orRefuse(yard.species.get(speciesId), 'species'),
      basis: yard.meters.get(live.meterId)?.description?.basis ?? null,
      ownCalibration: ownFits.calibration(speciesId, live.meterId),
    });
  }

  /** Where the board stood at that instant, with the EMC of that month's air. */
  function placeAt(moves: readonly Move[], at: string): BoardEvidence['place'] {
    const yard = context.yard();
    const move = moves.findLast((each) => each.since <= at) ?? moves[0];
    const place = orRefuse(yard.places.get(orRefuse(move, 'move').placeId), 'place');
    const month = new Date(at).getMonth();
    return {
      name: place.name,
      kind: place.kind,
      emcPct: emcOfYear(place.air).monthlyEmcPct[month] ?? null,
      airTempC: place.air[month]?.tempC ?? null,
    };
  }

  function previousFinding(known: KnownBoard, roundId: number, at: string): BoardEvidence['previous'] {
    const before = context
      .yard()
      .readings.roundsOfBoard(known.boardId)
      .filter((id) => id < roundId)
      .at(-1);
    if (before === undefined) return null;
    const { estimate, readings } = judgeBoard(evidenceOf(known, before, false));
    const takenAt = readings.at(-1)?.takenAt;
    if (estimate === null || takenAt === undefined) return null;
    const moved = known.moves.some(({ since }) => since > takenAt && since <= at);
    return { estimate, takenAt, moved };
  }

  /** Judges a board's readings of one round and keeps what was found for lists and labels. */
  function judge(boardId: number, roundId: number): Assessment {
    const known = knownBoard(boardId);
    const assessment = assessKnown(known, roundId);
    const finding = findingOf(roundId, known.facts, assessment);
    const yard = context.yard();
    // Whatever is written by itself waits for the disk.
    yard.transaction(() => {
      if (finding === null) yard.findings.drop(boardId, roundId);
      else yard.findings.put(boardId, finding, RULES_VERSION);
    });
    return assessment;
  }

  function judgeInAllRounds(boardId: number): void {
    const { readings, transaction } = context.yard();
    transaction(() => {
      for (const roundId of readings.roundsOfBoard(boardId)) judge(boardId, roundId);
    });
  }

  /** Boards to be judged again in all their rounds, after something that their findings rest on changed. */
  const boardsToJudge = createBacklog(
    context,
    judgeInAllRounds,
    // Not before all are judged: each of them would have its round compared anew.
    compareUnsettled,
  );

  /** Judges boards again in all their rounds, now or, where the app ends before that, when the yard is opened again. */
  function judgeAgain(boardIds: readonly number[]): void {
    context.yard().findings.outdate(boardIds);
    boardsToJudge.add(boardIds);
  }

  /** Rounds of which the boards still to be judged are, before others: somebody looks at them. */
  const roundsToJudge = createBacklog(context, async (roundId, yieldIfDue) => {
    for (const boardId of dueIn(cached(roundId))) {
      judge(boardId, roundId);
      if (!(await yieldIfDue())) return;
    }
    hurried.delete(roundId);
  });
  /** Those that were asked for and not done: where judging fails, looking again must not begin it again. */
  const hurried = new Set<number>();

  /** Every board read in the round with its finding; null where that is still to be made. */
  function cached(roundId: number): Map<number, RoundFinding | null> {
    return context.yard().findings.inRound(roundId, RULES_VERSION);
  }

  /**
   * What the round found on every board read in it. Null where there are too many to be judged while somebody waits:
   * they are being judged then, and the window hears of it as of any change of the yard.
   */
  function findings(roundId: number): ReadonlyMap<number, RoundFinding | null> {
    const found = cached(roundId);
    const due = dueIn(found);
    if (due.length <= MOST_JUDGED_AT_ONCE) {
      for (const boardId of due) {
        const known = knownBoard(boardId);
        found.set(boardId, findingOf(roundId, known.facts, assessKnown(known, roundId)));
      }
    } else if (context.mayWrite() && !hurried.has(roundId)) {
      hurried.add(roundId);
      roundsToJudge.add([roundId]);
    }
    return found;
  }

  /** Judges the boards of a round that something was said of, at once where they are few. */
  function judgeDue(roundId: number): void {
    const due = dueIn(cached(roundId));
    if (due.length > MOST_JUDGED_AT_ONCE) roundsToJudge.add([roundId]);
    else {
      context.yard().transaction(() => {
        for (const boardId of due) judge(boardId, roundId);
      });
    }
  }

  /** Rounds whose boards are to be held against each other, and judged anew where that has another word on them. */
  const roundsToCompare = createBacklog(context, async (roundId, yieldIfDue) => {
    const { comparisons, readings, transaction } = context.yard();
    comparisons.begin(roundId);
    const walked = readings.boardsWalked(roundId);
    const given: BoardOfRound[] = [];
    for (const boardId of walked) {
      const known = knownBoard(boardId);
      given.push({ code: known.facts.code, evidence: evidenceOf(known, roundId, true) });
      if (!(await yieldIfDue())) return;
    }
    const found = await roundThread.ask(given);
    if (!(await yieldIfDue())) return;
    const suspicions = new Map(
      walked
        .map((boardId, index) => [boardId, found[index] ?? []] as const)
        .filter(([, of]) => of.length > 0),
    );
    for (const boardId of new Set([...comparisons.questionableBoards(roundId), ...suspicions.keys()])) {
      // Both or neither: a board that has the doubts already is taken as judged with them.
      const assessment = transaction(() =>
        comparisons.put(roundId, boardId, suspicions.get(boardId) ?? []) ? judge(boardId, roundId) : null,
      );
      if (assessment) heard(roundId, boardId, assessment);
      if (!(await yieldIfDue())) return;
    }
    if (!comparisons.settle(roundId, RULES_VERSION)) roundsToCompare.add([roundId]);
  });

  function compareUnsettled(): void {
    roundsToCompare.add(context.yard().comparisons.unsettled(RULES_VERSION));
  }

  /** Takes up what was left undone when the yard was last open, or was done by older rules. */
  function takeUp(): void {
    const boardIds = context.yard().findings.boardsDue(RULES_VERSION);
    if (boardIds.length > 0) boardsToJudge.add(boardIds);
    else compareUnsettled();
  }

  return {
    assess,
    correct,
    judge,
    findings,
    judgeDue,
    judgeAgain,
    compare: roundsToCompare.add,
    takeUp,
    leave: (): void => {
      boardsToJudge.leave();
      roundsToJudge.leave();
      hurried.clear();
      roundsToCompare.leave();
    },
    /** Called with each board of which a comparison of its round has another word now. */
    whenCompared: (listener: typeof heard): void => {
      heard = listener;
    },
  };
}
export type Judging = ReturnType<typeof createJudging>;

const dueIn = (found: ReadonlyMap<number, RoundFinding | null>): number[] =>
  [...found].filter(([, finding]) => finding === null).map(([boardId]) => boardId);
