import type { RoundFinding } from '../../../shared-core/contract/round.ts';
import type { Move, Place } from '../../../shared-core/contract/yard.ts';
import type { Assessment, Call } from '../../../shared-core/probing/calls/assessment.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import { callHere, type Found, type LowestEmc } from '../../../shared-core/probing/calls/call-here.ts';
import { THIN_MM } from '../../../shared-core/probing/calls/decide.ts';
import { FULL_ROUND_HOLDS } from '../../../shared-core/probing/calls/half-probed.ts';
import { RULES_VERSION } from '../../../shared-core/probing/calls/rules-version.ts';
import { halfProbed, planOfFinished, spotsByDepth } from '../../../shared-core/probing/calls/spots-read.ts';
import type { BoardOfRound } from '../../../shared-core/probing/calls/suspicions-of-round.ts';
import { assumedTempIn } from '../../../shared-core/probing/readings/assumed-temp.ts';
import { profileAt } from '../../../shared-core/probing/readings/core-history.ts';
import { correctedIn } from '../../../shared-core/probing/readings/corrected-reading.ts';
import type {
  BoardEvidence,
  EarlierRound,
  MeterFacts,
} from '../../../shared-core/probing/readings/evidence.ts';
import { scaleOf } from '../../../shared-core/probing/readings/meter-profile.ts';
import { isNewHere, type Stop } from '../../../shared-core/probing/readings/new-here.ts';
import { PAIRS, type PlanBasis } from '../../../shared-core/probing/readings/plan-basis.ts';
import type { HistoryProfile } from '../../../shared-core/probing/readings/profile-posterior.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import type { Corrected, ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import { NEVER_OFF } from '../../../shared-core/wood/moisture/meter-bias.ts';
import { type MeterRecord, NO_RECORD, unitOf } from '../../store/meter-table.ts';
import type { YardReader } from '../../store/yard.ts';
import { measuredTempC } from '../air/air-at.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import { findingOf, foundOf } from './finding.ts';
import { createLearning, type MeterMeaning } from './learning.ts';
import { lowestEmcOf } from './lowest-emc.ts';
import type { OwnFits } from './own-fits.ts';
import { createPriors } from './priors.ts';

/** A person waits for no more boards than this to be judged; more are judged in the background. */
export const MOST_JUDGED_AT_ONCE = 20;

/** Where a pin meter's scale in % usually begins and ends, for typed readings. From memory. */
const USUAL_SCALE_PCT = { min: 5, max: 100 };

/** Of typed readings that name no meter. */
const TYPED: MeterMeaning = { scale: { kind: 'unknown' } };

/** Which corrections a reading is judged with: the person's own too, or the published ones alone. */
type Corrections = 'own' | 'published';

/** What a round is of one board, whether it is saved or still to be. */
export interface RoundOfBoard {
  startedAt: string;
  /** Of the air then, °C, where a person gave it. */
  airTempC: number | null;
  /** All of it, excluded ones too. */
  readings: Reading[];
  planBasis: PlanBasis;
  /** Whether no more of it is to come. */
  isFinished: boolean;
  /** Whether it was typed of an earlier day. */
  isTyped: boolean;
  /** The round before it; null where there is none. */
  before: number | null;
}

/** What every round of a board is judged by. */
interface KnownBoard {
  boardId: number;
  facts: NonNullable<ReturnType<YardReader['boards']['judgedBy']>>;
  moves: readonly Move[];
  /** Those of its rounds that were read: judging one asks for the same several times. */
  rounds: Map<number, RoundOfBoard>;
  /** Whether each of them that was asked about is believed. */
  believed: Map<number, boolean>;
}

const isCallOf = (call: Call | null): boolean => call !== null && call !== 'probe-again';

/** The move that brought a board to where it was at an instant; its first where that is later. */
export const moveAt = (moves: readonly Move[], at: string): Move | undefined =>
  moves.findLast(({ since }) => Date.parse(since) <= Date.parse(at)) ?? moves[0];

/** Brings together what the core needs to judge a board. Nothing is saved here. */
export function createAssessing(context: QueryContext, ownFits: OwnFits) {
  const learning = createLearning(
    context,
    ownFits,
    (boardId, roundId) => judgeBoard(evidenceOf(knownBoard(boardId), roundId, false, 'published')),
    (meterId) => (meterId === null ? TYPED : meaningOf(context.yard().meters.get(meterId) ?? NO_RECORD)),
  );
  const checksOf = createPriors(context);

  function assess(boardId: number, roundId: number): Assessment {
    return assessKnown(knownBoard(boardId), roundId);
  }

  /** What a round found on a board, for lists and labels, and the whole of it. */
  function assessWithFinding(
    boardId: number,
    roundId: number,
  ): { assessment: Assessment; finding: RoundFinding | null } {
    const known = knownBoard(boardId);
    const assessment = assessKnown(known, roundId);
    const planned = { ...known.facts, planBasis: savedRound(known, roundId).planBasis };
    return { assessment, finding: findingOf(roundId, planned, assessment) };
  }

  /** With what the place says of a board that is too wet. */
  function assessKnown(known: KnownBoard, roundId: number): Assessment {
    const { evidence, assessment } = byReadings(known, roundId);
    const found = foundOf(assessment);
    if (found === null) return assessment;
    const { averagePct, corePct } = found;
    const { id, name } = placeAt(known.moves, found.at);
    const here = {
      placeName: name,
      lowestEmc: lowestEmcAt(id),
      target: evidence.endUse,
      averagePct: averagePct ?? 0,
      corePct,
      getsThere: null,
    };
    return { ...assessment, ...callHere(found, here) };
  }

  function byReadings(
    known: KnownBoard,
    roundId: number,
  ): { evidence: BoardEvidence; assessment: Assessment } {
    const evidence = evidenceOf(known, roundId, true);
    // What the round's boards told of each other was told of the board that was read.
    const read = new Set([known.boardId, ...evidence.readings.map(({ boardId }) => boardId)]);
    const { comparisons } = context.yard();
    const ofRound = [...read].flatMap((boardId) => comparisons.suspicions(roundId, boardId));
    return { evidence, assessment: judgeBoard(evidence, ofRound) };
  }

  /**
   * What a board's latest round found by its readings alone: the newest that does not leave the call to a full one before
   * it; null where it was never probed.
   */
  function found(boardId: number): Found | null {
    const known = knownBoard(boardId);
    for (const roundId of context.yard().readings.roundsOfBoard(boardId).toReversed()) {
      const each = foundOf(byReadings(known, roundId).assessment);
      if (each !== null && each.reasons[0].code !== FULL_ROUND_HOLDS) return each;
    }
    return null;
  }

  function lowestEmcAt(placeId: number): LowestEmc {
    const { places } = context.yard();
    return lowestEmcOf(orRefuse(places.get(placeId), 'place'), places.airOffsetPct(placeId));
  }

  /** What readings come to that are not saved yet; by the same checks as saved ones. */
  function assessUnsaved(boardId: number, round: RoundOfBoard): Assessment {
    const known = knownBoard(boardId);
    return judgeBoard(evidenceBy(known, round, true, 'own', isBelievedUntil(known, round.before)));
  }

  /** What the round of a saved reading comes to where that reads otherwise. */
  function assessCorrected(
    { id, boardId, roundId }: Reading,
    value: { raw: number; isAbove: boolean },
  ): Assessment {
    const round = savedRound(knownBoard(boardId), roundId);
    const readings = round.readings.map((each) => (each.id === id ? { ...each, ...value } : each));
    return assessUnsaved(boardId, { ...round, readings });
  }

  /** A board as it is compared with the others of its round. */
  function boardOfRound(boardId: number, roundId: number): BoardOfRound {
    const known = knownBoard(boardId);
    return { code: known.facts.code, evidence: evidenceOf(known, roundId, true) };
  }

  /** Works out what a board can be expected to have until a round of it is believed, which is remembered until it is read. */
  function expect(boardId: number, roundId: number): void {
    const known = knownBoard(boardId);
    if (!isBelievedBefore(known, roundId))
      firstRoundChecks(known, orRefuse(context.yard().rounds.get(roundId), 'round').startedAt);
  }

  function firstRoundChecks({ boardId, moves, facts }: KnownBoard, at: string) {
    if (facts.driedBy === 'kiln') return {};
    const species = orRefuse(context.yard().species.get(facts.speciesId), 'species');
    return checksOf({ ...facts, boardId, moves, species }, at);
  }

  function knownBoard(boardId: number): KnownBoard {
    const { boards, moves } = context.yard();
    const facts = orRefuse(boards.judgedBy(boardId), 'board');
    return { boardId, facts, moves: moves.ofBoard(boardId), rounds: new Map(), believed: new Map() };
  }

  function evidenceOf(
    known: KnownBoard,
    roundId: number,
    withPrevious: boolean,
    by: Corrections = 'own',
    isKnown = by === 'published' || isBelievedBefore(known, roundId),
  ): BoardEvidence {
    return evidenceBy(known, savedRound(known, roundId), withPrevious, by, isKnown);
  }

  function savedRound({ boardId, rounds: read }: KnownBoard, roundId: number): RoundOfBoard {
    const known = read.get(roundId);
    if (known) return known;
    const { rounds, readings } = context.yard();
    const { startedAt, datedBy, finishedAt, airTempC } = orRefuse(rounds.get(roundId), 'round');
    const round = {
      startedAt,
      airTempC,
      readings: readings.ofBoard(boardId, roundId),
      planBasis: basisOf(boardId, roundId),
      isFinished: finishedAt !== null,
      isTyped: datedBy !== 'clock',
      before: readings.roundBefore(boardId, roundId) ?? null,
    };
    read.set(roundId, round);
    return round;
  }

  function evidenceBy(
    known: KnownBoard,
    round: RoundOfBoard,
    withPrevious: boolean,
    by: Corrections,
    isKnown: boolean,
  ): BoardEvidence {
    const yard = context.yard();
    const {
      speciesId,
      endUseId,
      code: _code,
      sawnOn,
      driedBy: _driedBy,
      barkSide: _barkSide,
      barkOffOn: _barkOffOn,
      ...board
    } = known.facts;
    const { readings, before } = round;
    const planned = spotsByDepth(planSpots({ ...board, planBasis: round.planBasis }).plan);
    const at = readings.at(-1)?.takenAt ?? round.startedAt;
    const profileIds = new Set(
      readings.map(({ meterProfileId }) => meterProfileId).filter((id) => id !== null),
    );
    const species = orRefuse(yard.species.get(speciesId), 'species');
    const earlier = withPrevious ? earlierRounds(known, before, at) : { previous: null, fullRound: null };
    return {
      board,
      plan: round.isFinished ? planOfFinished(planned, readings, round) : planned,
      species,
      endUse: orRefuse(yard.endUses.get(endUseId), 'use'),
      place: {
        ...placeFacts(placeAt(known.moves, at), at),
        ...airOf(placeAt(known.moves, at), at, round.airTempC),
        isNewHere: isNewHere(stopsOf(known.moves, at), sawnOn, at),
      },
      readings,
      meters: Object.fromEntries([...profileIds].map((id) => [id, meterFacts(speciesId, id, by)])),
      typedBasis: {
        ...TYPED,
        range: USUAL_SCALE_PCT,
        ...ownCorrection(speciesId, null, TYPED, by),
      },
      profile: by === 'own' ? historyProfile(known, before, at) : null,
      ...earlier,
      // Nothing is compared with it before there is a reading.
      ...(isKnown || readings.length === 0 ? {} : firstRoundChecks(known, at)),
    };
  }

  /**
   * Whether an earlier round's readings told more than to probe again. Until then each round is checked by what the board
   * can be.
   */
  function isBelievedBefore(known: KnownBoard, roundId: number): boolean {
    return isBelievedUntil(known, savedRound(known, roundId).before);
  }

  /** The same of a round, where that is the last before. */
  function isBelievedUntil(known: KnownBoard, last: number | null): boolean {
    if (last === null) return false;
    const rounds = context.yard().readings.roundsOfBoard(known.boardId);
    return rounds.slice(0, rounds.indexOf(last) + 1).some((id) => {
      const is = known.believed.get(id) ?? isBelieved(known, id);
      known.believed.set(id, is);
      return is;
    });
  }

  /**
   * By its finding, where one is saved: none is made here, which would ask for those of all rounds before it. The shell of a
   * thick board alone does not tell what its core can be.
   */
  function isBelieved(known: KnownBoard, roundId: number): boolean {
    const { boardId, facts } = known;
    const isShellAlone = () =>
      savedRound(known, roundId).readings.every(({ spot }) => spot.depth === 'shell');
    if (facts.thicknessMm > THIN_MM && isShellAlone()) return false;
    const saved = context.yard().findings.one(boardId, roundId, RULES_VERSION);
    if (saved !== null) return isCallOf(saved.call) && !saved.isQuestionable;
    const { call, reliable } = judgeBoard(evidenceOf(known, roundId, false, 'own', false));
    return isCallOf(call) && reliable !== null;
  }

  /**
   * What a thick board's history tells of its core on that day, by its readings before this round alone: those of the round
   * would count twice.
   */
  function historyProfile(
    { boardId, facts }: KnownBoard,
    afterRoundId: number | null,
    at: string,
  ): HistoryProfile | null {
    if (facts.thicknessMm <= THIN_MM) return null;
    const { coreHistories } = context.yard();
    return profileAt(coreHistories.of({ boardId, afterRoundId }) ?? [], Date.parse(at));
  }

  /** What a board that was read was planned by. */
  const basisOf = (boardId: number, roundId: number): PlanBasis =>
    context.yard().spotPlans.ofBoard(roundId, boardId) ?? PAIRS;

  function meterFacts(speciesId: string, profileId: number, by: Corrections): MeterFacts {
    const version = context.yard().meters.version(profileId) ?? { ...NO_RECORD, meterId: null };
    const meaning = meaningOf(version);
    return {
      ...meaning,
      pins: version.profile?.pins ?? null,
      // What the scale of a hand meter in ohms holds is not known.
      range: version.description?.range ?? (unitOf(version) === 'ohm' ? null : USUAL_SCALE_PCT),
      ...ownCorrection(speciesId, version.meterId, meaning, by),
    };
  }

  /** What the person's own checks say of a meter on a species: their line where they chose it, else what is learned. */
  function ownCorrection(
    speciesId: string,
    meterId: number | null,
    meaning: MeterMeaning,
    by: Corrections = 'own',
  ): Pick<MeterFacts, 'ownCalibration' | 'learned'> {
    if (by === 'published') return { learned: NEVER_OFF };
    const ownCalibration = ownFits.calibration(speciesId, meterId);
    return ownCalibration ? { ownCalibration } : { learned: learning.of(speciesId, meterId, meaning) };
  }

  /** One value corrected for the board it is read on, now or at an instant. */
  function correct({
    at = context.now(),
    ...live
  }: {
    boardId: number;
    value: number;
    unit: ReadingUnit;
    woodTempC: number | null;
    meterId: number;
    at?: string;
  }): Corrected {
    const yard = context.yard();
    // Without its forecast, which takes longer to read than all the rest: a lively meter asks fifty times a second.
    const { speciesId } = orRefuse(yard.boards.judgedBy(live.boardId), 'board');
    const there = placeAt(yard.moves.ofBoard(live.boardId), at);
    const place = { ...placeFacts(there, at), ...airOf(there, at, null) };
    const meaning = meaningOf(yard.meters.get(live.meterId) ?? NO_RECORD);
    return correctReading({
      value: live.value,
      unit: live.unit,
      woodTempC: live.woodTempC,
      airTemp: assumedTempIn(place),
      species: orRefuse(yard.species.get(speciesId), 'species'),
      ...meaning,
      ...ownCorrection(speciesId, live.meterId, meaning),
    });
  }

  /** What each reading of a board in a round comes to; nothing is judged. */
  function corrected(boardId: number, roundId: number): { reading: Reading; corrected: Corrected }[] {
    const evidence = evidenceOf(knownBoard(boardId), roundId, false, 'own', true);
    return evidence.readings.map((reading) => ({ reading, corrected: correctedIn(reading, evidence) }));
  }

  /** Where the board was at that instant. */
  function placeAt(moves: readonly Move[], at: string): Place {
    return orRefuse(context.yard().places.get(orRefuse(moveAt(moves, at), 'move').placeId), 'place');
  }

  /** Air that was measured there then, which holds in place of the month's. @param ofRound  a person gave it for the round, °C */
  function airOf(
    place: Place,
    at: string,
    ofRound: number | null,
  ): Pick<BoardEvidence['place'], 'airTempC' | 'isAirMeasured'> {
    const airTempC = ofRound ?? measuredTempC(context.yard(), place, at);
    return airTempC === null ? {} : { airTempC, isAirMeasured: true };
  }

  /** Where it was, with the EMC of each place in the month of that instant. */
  function stopsOf(moves: readonly Move[], at: string): Stop[] {
    return moves.map(({ since, placeId }) => {
      const { emcPct } = placeFacts(orRefuse(context.yard().places.get(placeId), 'place'), at);
      return { since, emcPct };
    });
  }

  function earlierRounds(
    known: KnownBoard,
    previousId: number | null,
    at: string,
  ): Pick<BoardEvidence, 'previous' | 'fullRound'> {
    if (previousId === null) return { previous: null, fullRound: null };
    const previous = earlierRound(known, previousId, at);
    let full = previous;
    let id = previousId;
    while (full?.isFull !== true) {
      const { before } = savedRound(known, id);
      if (before === null) return { previous: previous?.round ?? null, fullRound: null };
      id = before;
      full = earlierRound(known, id, at);
    }
    return { previous: previous?.round ?? null, fullRound: full.round };
  }

  /** Null where none of its readings counts. */
  function earlierRound(
    known: KnownBoard,
    roundId: number,
    at: string,
  ): { round: EarlierRound; isFull: boolean } | null {
    const evidence = evidenceOf(known, roundId, false);
    const { estimate, readings, call } = judgeBoard(evidence);
    const takenAt = readings.at(-1)?.takenAt;
    if (estimate === null || takenAt === undefined) return null;
    const moved = known.moves.some(
      ({ since }) => Date.parse(since) > Date.parse(takenAt) && Date.parse(since) <= Date.parse(at),
    );
    return {
      round: { estimate, takenAt, moved, isReady: call === 'ready' },
      isFull: halfProbed(estimate, evidence) === null,
    };
  }

  /** Every board read in the round with its finding as it is saved; null where that is still to be made. */
  function savedFindings(roundId: number): Map<number, RoundFinding | null> {
    return context.yard().findings.inRound(roundId, RULES_VERSION);
  }

  /** What the round found on every board read in it; null where too many are still to be judged to wait for them. */
  function findings(roundId: number): ReadonlyMap<number, RoundFinding | null> {
    const found = savedFindings(roundId);
    const due = dueIn(found);
    if (due.length <= MOST_JUDGED_AT_ONCE) {
      for (const boardId of due) found.set(boardId, assessWithFinding(boardId, roundId).finding);
    }
    return found;
  }

  /** What a round found on one board, as it is saved; judged now where that is still to be made. */
  const finding = (boardId: number, roundId: number): RoundFinding | null =>
    context.yard().findings.one(boardId, roundId, RULES_VERSION) ??
    assessWithFinding(boardId, roundId).finding;

  return {
    learning,
    assess,
    assessUnsaved,
    assessCorrected,
    assessWithFinding,
    found,
    finding,
    boardOfRound,
    expect,
    correct,
    corrected,
    findings,
    /** Boards of the round whose readings are still to be judged by these rules. */
    dueInRound: (roundId: number): number[] => dueIn(savedFindings(roundId)),
  };
}
export type Assessing = ReturnType<typeof createAssessing>;

/** What a meter's values mean, for their correction. */
const meaningOf = (meter: MeterRecord) => ({
  scale: scaleOf(unitOf(meter), meter.profile),
  compensatesTemp: meter.profile?.compensatesTemp ?? null,
  meterSdPct: meter.profile?.sdPct ?? null,
  meterOff: meter.off,
});

/** With the air of that month. */
function placeFacts(place: Place, at: string): BoardEvidence['place'] {
  const month = new Date(at).getMonth();
  return {
    name: place.name,
    kind: place.kind,
    emcPct: emcOfYear(place.air).monthlyEmcPct[month] ?? null,
    month: month + 1,
    airTempC: place.air[month]?.tempC ?? null,
  };
}

const dueIn = (found: ReadonlyMap<number, RoundFinding | null>): number[] =>
  [...found].filter(([, finding]) => finding === null).map(([boardId]) => boardId);
