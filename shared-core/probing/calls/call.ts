import { correctReading } from '../../wood/moisture/correction.ts';
import { shownPoints } from '../../wood/moisture/shown-points.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Message, message, type PctRange } from '../../words/message.ts';
import {
  type BoardEstimate,
  type CountedReading,
  estimateBoard,
  extraReadingsFor,
} from '../readings/estimate.ts';
import type { BoardEvidence, PlaceFacts } from '../readings/evidence.ts';
import type { JudgedReading, Suspicion } from '../readings/reading.ts';
import { END_CLEARANCE_MM } from '../readings/spots.ts';
import { DAMAGED, meterOf } from '../suspicions/reading-suspicions.ts';
import type { RoundSuspicion } from '../suspicions/round-suspicions.ts';
import { isQuestionable, isRefused, suspicionsOf } from '../suspicions/suspicion.ts';
import type { Assessment, ReasonedCall } from './assessment.ts';
import { NEVER_QUITE_PCT } from './never-quite.ts';

/** So many readings of either depth must not be questionable before a board is called ready; 1 on a short board. */
const FEWEST_PER_DEPTH = 2;
/** The air of a place brings wood this near to its EMC in a time worth waiting for, % MC (common practice, no source). */
const NOT_WORTH_WAITING_PCT = 1.5;
/** Part of the use's range, either side, that stays clear where the meter cannot tell finer. */
const GUARD_SHARE = 0.25;
/** An interval wider than this to either side, as a part of the range, says nothing about it. */
const TOO_VAGUE_SHARE = 0.6;
/** More pins per depth than this are not asked for. */
const MOST_EXTRA = 6;

/**
 * Everything that one board's readings in one round amount to: each reading corrected, with what speaks against it; the
 * board's estimate from those that count; and the call with its reasons.
 *
 * The call uses only readings that are not questionable, and so does what is shown with it; where the others would
 * overturn a good call, the board is to be probed again.
 *
 * @param ofRound suspicions that come from the round as a whole (`suspicions-of-round.ts`)
 */
export function judgeBoard(evidence: BoardEvidence, ofRound: readonly RoundSuspicion[] = []): Assessment {
  const corrected = evidence.readings.map((reading) => {
    const { scale, compensatesTemp, meterSdPct, ownCalibration } = meterOf(reading, evidence);
    return {
      reading,
      corrected: correctReading({
        value: reading.raw,
        unit: reading.unit,
        woodTempC: reading.woodTempC,
        species: evidence.species,
        scale,
        compensatesTemp,
        meterSdPct,
        ownCalibration,
      }),
    };
  });
  const ofReadings = suspicionsOf(corrected, evidence);
  const readings = corrected.map(({ reading, corrected }, index): JudgedReading => {
    const ofDepth = reading.isDamaged
      ? []
      : ofRound.filter(({ depth }) => depth === null || depth === reading.spot.depth);
    // The stack says more of the same suspicion than the board's own last round.
    const isApart = ofDepth.some(({ suspicion }) => suspicion.rule === 'apart-from-stack');
    const suspicions = [
      ...ofReadings[index]!.filter(({ rule }) => !isApart || rule !== 'jump-since-last-round'),
      ...ofDepth.map(({ suspicion }) => suspicion),
    ];
    const counts = reading.excluded === null && corrected.mcPct !== null && !isRefused(suspicions);
    return { ...reading, corrected, suspicions, counts };
  });
  const { thicknessMm } = evidence.board;
  const all = estimateBoard(countedOf(readings), thicknessMm);
  const firm = estimateBoard(
    countedOf(readings.filter((each) => !isQuestionable(each.suspicions))),
    thicknessMm,
  );
  return { ...callOf(all, firm, readings, evidence), readings, estimate: all?.estimate ?? null };
}

function countedOf(readings: readonly JudgedReading[]): CountedReading[] {
  return readings.flatMap((reading) => {
    const { mcPct, standardUncertaintyPct } = reading.corrected;
    return reading.counts && mcPct !== null && standardUncertaintyPct !== null
      ? [{ reading, mcPct, standardUncertaintyPct }]
      : [];
  });
}

type Called = Pick<Assessment, 'call' | 'reasons' | 'reliable'>;

function callOf(
  all: BoardEstimate | null,
  firm: BoardEstimate | null,
  readings: readonly JudgedReading[],
  evidence: BoardEvidence,
): Called {
  const included = readings.filter(({ excluded }) => excluded === null);
  const suspicions = included.flatMap((each) => (each.isDamaged ? [] : each.suspicions));
  const heaviest =
    suspicions.find((each) => each.severity === 'refused') ??
    suspicions.find((each) => each.severity === 'questionable');
  if (all === null) {
    const damaged = included.some(({ isDamaged }) => isDamaged) ? DAMAGED : undefined;
    return { ...nothingCounts(readings, heaviest ?? damaged), reliable: null };
  }
  if (firm === null) return { ...everythingQuestionable(all, heaviest), reliable: null };

  const decided = withRoughAir(withRemedy(decide(firm, evidence), suspicions), evidence.place);
  const questionable = readings.filter((each) => each.counts && isQuestionable(each.suspicions)).length;
  const reliable = firm.estimate;
  if (questionable === 0 || heaviest === undefined) return { ...decided, reliable };
  const { call, reasons } = decided;
  if (call === 'keep-drying' || call === 'probe-again' || call === decide(all, evidence).call)
    return {
      call,
      reasons: [...reasons, message('call.questionable-unused', { questionable, why: heaviest.why })],
      reliable,
    };
  const firmPct = firm.estimate.averagePct;
  const allPct = all.estimate.averagePct;
  return {
    call: 'probe-again',
    reasons: [
      message('call.would-change', { questionable }),
      message('call.would-be', { questionable, callName: message(`call.${call}`), firmPct, allPct }),
      ...adviceOf(heaviest),
    ],
    reliable: null,
  };
}

/** A temperature not measured is the cheapest uncertainty to remove. */
function withRemedy(decided: ReasonedCall, suspicions: readonly Suspicion[]): ReasonedCall {
  const unknown = suspicions.find((each) => each.rule === 'temperature-unknown');
  if (decided.call !== 'probe-again' || unknown === undefined) return decided;
  return { ...decided, reasons: [...decided.reasons, ...adviceOf(unknown)] };
}

/** A call that uses the average air of a region is as rough as that air. */
function withRoughAir(decided: ReasonedCall, { isRough, name: placeName }: PlaceFacts): ReasonedCall {
  const isUsed = decided.reasons.some(({ facts }) => facts !== undefined && 'emcPct' in facts);
  if (!isRough || !isUsed) return decided;
  return { ...decided, reasons: [...decided.reasons, message('call.rough-air', { placeName })] };
}

function nothingCounts(readings: readonly JudgedReading[], refused: Suspicion | undefined): ReasonedCall {
  if (readings.length === 0) return probeAgain(message('call.no-readings'));
  if (refused === undefined) return probeAgain(message('call.none-left'));
  return probeAgain(message('call.none-usable', { why: refused.why }), refused.whatToDo);
}

function everythingQuestionable({ estimate }: BoardEstimate, suspicion: Suspicion | undefined): ReasonedCall {
  const { averagePct } = estimate;
  return probeAgain(message('call.all-questionable', { averagePct }), ...adviceOf(suspicion));
}

const probeAgain = (...reasons: ReasonedCall['reasons']): ReasonedCall => ({ call: 'probe-again', reasons });

const adviceOf = (suspicion: Suspicion | undefined): Message[] =>
  suspicion === undefined ? [] : [suspicion.why, suspicion.whatToDo];

/** The call from one estimate, as if no reading in it were questionable. */
function decide(board: BoardEstimate, evidence: BoardEvidence): ReasonedCall {
  const { endUse, place } = evidence;
  const { averagePct, lowPct, highPct } = board.estimate;
  const few = tooFew(board, evidence);
  if (lowPct > endUse.maxPct || (averagePct > endUse.maxPct && few === null))
    return tooWet(board, endUse, place);
  if (few !== null) return probeAgain(few, message('call.likely', { likelyInterval: likely(board) }));
  if (averagePct < endUse.minPct && (highPct < endUse.minPct || !moreWouldTell(board, endUse)))
    return tooDry(board, endUse);
  if (!fits(board, endUse)) return unsure(board, endUse, place);
  return shellAndCore(board, endUse, place) ?? ready(board, endUse);
}

const likely = ({ estimate }: BoardEstimate): PctRange => estimate.likelyInterval;
const targetOf = ({ minPct, maxPct }: EndUse): PctRange => ({ minPct, maxPct });

function tooFew({ estimate }: BoardEstimate, { board }: BoardEvidence): Message | null {
  const isShort = board.lengthMm !== null && board.lengthMm < 2 * END_CLEARANCE_MM + 150;
  const least = isShort ? 1 : FEWEST_PER_DEPTH;
  const shell = Math.max(0, least - estimate.countedShell);
  const core = Math.max(0, least - estimate.countedCore);
  if (shell === 0 && core === 0) return null;
  const missing = [
    ...(shell > 0 ? [message('call.more-shell', { count: shell })] : []),
    ...(core > 0 ? [message('call.more-core', { count: core })] : []),
  ];
  return isShort
    ? message('call.too-few.short-board', { missing })
    : message('call.too-few', { missing, spots: Math.max(shell, core) });
}

/**
 * Whether the interval sits inside the use's range. Where the range is so narrow that the meter's own uncertainty
 * would never let it, the average must lie in the range's middle half instead, and the interval must still be
 * narrow enough to mean something.
 */
function fits({ estimate }: BoardEstimate, endUse: EndUse): boolean {
  const { averagePct, highPct } = estimate;
  const half = highPct - averagePct;
  const width = endUse.maxPct - endUse.minPct;
  if (half > TOO_VAGUE_SHARE * width) return false;
  const guard = Math.min(half, GUARD_SHARE * width);
  return averagePct + guard <= endUse.maxPct && (endUse.minPct === 0 || averagePct - guard >= endUse.minPct);
}

function extra(board: BoardEstimate, endUse: EndUse): number | null {
  return extraReadingsFor(board, (better) => fits(better, endUse), MOST_EXTRA);
}

const moreWouldTell = (board: BoardEstimate, endUse: EndUse): boolean => extra(board, endUse) !== null;

function tooWet(board: BoardEstimate, endUse: EndUse, place: PlaceFacts): ReasonedCall {
  const { averagePct, lowPct, highPct } = board.estimate;
  const targetRange = targetOf(endUse);
  const isSure = lowPct > endUse.maxPct;
  const wet = message(isSure ? 'call.too-wet' : 'call.probably-too-wet', { averagePct, targetRange });
  const { emcPct, name: placeName, month: airMonth } = place;
  const keepDrying = (why: Message): ReasonedCall => ({ call: 'keep-drying', reasons: [wet, why] });
  if (emcPct === null) return keepDrying(message('call.air-unknown', { placeName }));
  if (emcPct + NEVER_QUITE_PCT <= endUse.maxPct)
    return keepDrying(message('call.air-dries-to', { placeName, airMonth, emcPct }));
  const margin = Math.min(2.5, Math.max(NOT_WORTH_WAITING_PCT, highPct - averagePct));
  if (averagePct > emcPct + margin)
    return keepDrying(message('call.air-dries-only-to', { placeName, airMonth, emcPct }));
  return {
    call: 'bring-in',
    reasons: [
      message(`call.${againstPlace(averagePct, emcPct)}`, { averagePct, placeName, airMonth, emcPct }),
      message('call.likely-against-target', { likelyInterval: likely(board), targetRange }),
    ],
  };
}

/** Which sentence is true of a board that its place dries no further. */
function againstPlace(averagePct: number, emcPct: number) {
  if (averagePct < emcPct - NEVER_QUITE_PCT) return 'drier-than-place';
  return averagePct > emcPct + NEVER_QUITE_PCT ? 'nearly-dry-as-place' : 'dry-as-place';
}

function tooDry(board: BoardEstimate, endUse: EndUse): ReasonedCall {
  const { averagePct } = board.estimate;
  return probeAgain(
    message('call.below-target', { averagePct, targetRange: targetOf(endUse) }),
    message('call.likely', { likelyInterval: likely(board) }),
  );
}

function unsure(board: BoardEstimate, endUse: EndUse, place: PlaceFacts): ReasonedCall {
  const { averagePct, highPct } = board.estimate;
  const { emcPct, name: placeName, month: airMonth } = place;
  const close = { averagePct, targetRange: targetOf(endUse) };
  const likelyInterval = likely(board);
  const each = extra(board, endUse);
  if (each !== null)
    return probeAgain(
      message('call.too-close.more', { ...close, each }),
      message('call.likely', { likelyInterval }),
    );
  const moreWillNotHelp = message('call.more-will-not-help');
  const isAtTop =
    highPct > endUse.maxPct && averagePct > endUse.maxPct - GUARD_SHARE * (endUse.maxPct - endUse.minPct);
  if (isAtTop && emcPct !== null) {
    const probably = { likelyInterval, targetRange: close.targetRange };
    const air = { placeName, airMonth, emcPct };
    if (emcPct < averagePct - NEVER_QUITE_PCT)
      return {
        call: 'keep-drying',
        reasons: [
          message('call.too-close.drying', probably),
          message('call.air-dries-to', air),
          moreWillNotHelp,
        ],
      };
    if (emcPct + NEVER_QUITE_PCT > endUse.maxPct)
      return {
        call: 'bring-in',
        reasons: [
          message('call.too-close.bring-in', probably),
          message('call.air-dries-no-further', air),
          moreWillNotHelp,
        ],
      };
  }
  return probeAgain(
    message('call.too-close', close),
    message('call.likely', { likelyInterval }),
    moreWillNotHelp,
  );
}

function shellAndCore({ estimate }: BoardEstimate, endUse: EndUse, place: PlaceFacts): ReasonedCall | null {
  const { differencePct, averagePct } = estimate;
  const { maxShellCorePct: allowedPoints } = endUse;
  if (allowedPoints === null || differencePct === null || Math.abs(differencePct) <= allowedPoints)
    return null;
  return {
    call: 'keep-drying',
    reasons: [
      message(differencePct > 0 ? 'call.core-wetter' : 'call.shell-wetter', {
        differencePoints: shownDifference(estimate),
        allowedPoints,
        placeName: place.name,
      }),
      message('call.average-in-target', { averagePct, targetRange: targetOf(endUse) }),
    ],
  };
}

const shownDifference = ({ shellPct, corePct }: BoardEstimate['estimate']): number =>
  Math.abs(shownPoints(corePct ?? 0, shellPct ?? 0));

function ready(board: BoardEstimate, endUse: EndUse): ReasonedCall {
  const { averagePct, lowPct, highPct, differencePct } = board.estimate;
  const isInside = lowPct >= endUse.minPct && highPct <= endUse.maxPct;
  const why = message(isInside || endUse.minPct === 0 ? 'call.within-target' : 'call.middle-of-target', {
    averagePct,
    targetRange: targetOf(endUse),
    likelyInterval: likely(board),
  });
  const { maxShellCorePct: allowedPoints } = endUse;
  if (differencePct === null || allowedPoints === null) return { call: 'ready', reasons: [why] };
  const difference = message('call.difference-allowed', {
    differencePoints: shownDifference(board.estimate),
    allowedPoints,
  });
  return { call: 'ready', reasons: [why, difference] };
}
