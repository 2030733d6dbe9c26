import { correctReading } from '../../wood/moisture/correction.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import type { JudgedReading, Suspicion } from '../readings/reading.ts';
import { END_CLEARANCE_MM } from '../readings/spots.ts';
import { meterOf } from '../suspicions/reading-suspicions.ts';
import type { RoundSuspicion } from '../suspicions/round-suspicions.ts';
import { isQuestionable, isRefused, suspicionsOf } from '../suspicions/suspicion.ts';
import type { Assessment, Call, ReasonedCall } from './assessment.ts';
import { type BoardEstimate, type CountedReading, estimateBoard, extraReadingsFor } from './estimate.ts';
import type { BoardEvidence, PlaceFacts } from './evidence.ts';
import { counted, pct, rangeOf } from './wording.ts';

export type { BoardEvidence };

/** So many readings of either depth must stand undoubted before a board is called ready; 1 on a short board. */
const FEWEST_PER_DEPTH = 2;
/** The air of a place brings wood this near to its EMC in a time worth waiting for, % MC (common practice, no source). */
const NOT_WORTH_WAITING_PCT = 1.5;
const NEVER_QUITE_PCT = 0.5;
/** Part of the use's range, either side, that is kept clear where the meter cannot tell finer. */
const GUARD_SHARE = 0.25;
/** An interval wider than this to either side, as a part of the range, says nothing about it. */
const TOO_VAGUE_SHARE = 0.6;
/** More pins per depth than this are not asked for. */
const MOST_EXTRA = 6;

/**
 * Everything that one board's readings in one round amount to: each reading corrected and doubted, the board's
 * estimate from those that count, and the call with its reasons.
 *
 * The call leans on undoubted readings only. Doubted ones count in the estimate that is shown, and where they would
 * overturn a good call, the board is to be probed again.
 *
 * @param ofRound doubts that come from the round as a whole (`judge-round.ts`)
 */
export function judgeBoard(evidence: BoardEvidence, ofRound: readonly RoundSuspicion[] = []): Assessment {
  const corrected = evidence.readings.map((reading) => {
    const { basis, ownCalibration } = meterOf(reading, evidence);
    return {
      reading,
      corrected: correctReading({
        value: reading.raw,
        unit: reading.unit,
        woodTempC: reading.woodTempC,
        species: evidence.species,
        basis,
        ownCalibration,
      }),
    };
  });
  const ofReadings = suspicionsOf(corrected, evidence);
  const readings = corrected.map(({ reading, corrected }, index): JudgedReading => {
    const ofDepth = ofRound.filter(({ depth }) => depth === null || depth === reading.spot.depth);
    const suspicions = [...ofReadings[index]!, ...ofDepth.map(({ suspicion }) => suspicion)];
    const counts = reading.excluded === null && corrected.mcPct !== null && !isRefused(suspicions);
    return { ...reading, corrected, suspicions, counts };
  });
  const { thicknessMm } = evidence.board;
  const all = estimateBoard(countedOf(readings), thicknessMm);
  const firm = estimateBoard(
    countedOf(readings.filter((each) => !isQuestionable(each.suspicions))),
    thicknessMm,
  );
  return { readings, estimate: all?.estimate ?? null, call: callOf(all, firm, readings, evidence) };
}

function countedOf(readings: readonly JudgedReading[]): CountedReading[] {
  return readings.flatMap((reading) => {
    const { mcPct, standardUncertaintyPct } = reading.corrected;
    return reading.counts && mcPct !== null && standardUncertaintyPct !== null
      ? [{ reading, mcPct, standardUncertaintyPct }]
      : [];
  });
}

function callOf(
  all: BoardEstimate | null,
  firm: BoardEstimate | null,
  readings: readonly JudgedReading[],
  evidence: BoardEvidence,
): ReasonedCall {
  const suspicions = readings.flatMap((each) => (each.excluded === null ? each.suspicions : []));
  const heaviest =
    suspicions.find((each) => each.severity === 'refused') ??
    suspicions.find((each) => each.severity === 'questionable');
  if (all === null) return nothingCounts(readings, heaviest);
  if (firm === null) return everythingQuestionable(all, heaviest, evidence);

  const call = withRemedy(decide(firm, evidence), suspicions);
  const questionable = readings.filter((each) => each.counts && isQuestionable(each.suspicions)).length;
  if (questionable === 0) return call;
  const withQuestionable = decide(all, evidence);
  if (call.call === withQuestionable.call || call.call === 'keep-drying' || call.call === 'probe-again')
    return { ...call, reasons: [...call.reasons, questionableReason(questionable, heaviest)] };
  return {
    call: 'probe-again',
    reasons: [
      `It would be "${SAID[call.call]}" at ${pct(firm.estimate.averagePct)}, but not with the ${counted(questionable, 'doubtful reading')}, which ${questionable === 1 ? 'makes' : 'make'} it ${pct(all.estimate.averagePct)}.`,
      ...adviceOf(heaviest),
    ],
  };
}

/** A temperature that nobody measured is the cheapest uncertainty to be rid of. */
function withRemedy(call: ReasonedCall, suspicions: readonly Suspicion[]): ReasonedCall {
  const unknown = suspicions.find((each) => each.rule === 'temperature-unknown');
  if (call.call !== 'probe-again' || unknown === undefined) return call;
  return { ...call, reasons: [...call.reasons, unknown.why, unknown.whatToDo] };
}

const SAID: Record<Call, string> = {
  ready: 'ready',
  'bring-in': 'bring in',
  'keep-drying': 'keep drying',
  'probe-again': 'probe again',
};

function nothingCounts(readings: readonly JudgedReading[], refused: Suspicion | undefined): ReasonedCall {
  if (readings.length === 0) return { call: 'probe-again', reasons: ['Nothing was read on this board yet.'] };
  if (refused === undefined)
    return {
      call: 'probe-again',
      reasons: ['Every reading was set aside: 0 readings are left to judge by.'],
    };
  return { call: 'probe-again', reasons: [`No reading counts. ${refused.why}`, refused.whatToDo] };
}

function everythingQuestionable(
  all: BoardEstimate,
  suspicion: Suspicion | undefined,
  { endUse }: BoardEvidence,
): ReasonedCall {
  return {
    call: 'probe-again',
    reasons: [
      `Every reading is doubtful, so ${pct(all.estimate.averagePct)} cannot be relied on for ${endUse.name}.`,
      ...adviceOf(suspicion),
    ],
  };
}

const adviceOf = (suspicion: Suspicion | undefined): string[] =>
  suspicion === undefined ? [] : [suspicion.why, suspicion.whatToDo];

function questionableReason(questionable: number, suspicion: Suspicion | undefined): string {
  return `${counted(questionable, 'reading')} in doubt, and the call does not lean on ${questionable === 1 ? 'it' : 'them'}${suspicion === undefined ? '.' : `: ${suspicion.why}`}`;
}

/** The call from one estimate, as if nothing in it were doubted. */
function decide(board: BoardEstimate, evidence: BoardEvidence): ReasonedCall {
  const { endUse, place } = evidence;
  const { averagePct, lowPct, highPct } = board.estimate;
  if (lowPct > endUse.maxPct || (averagePct > endUse.maxPct && !tooFew(board, evidence)))
    return tooWet(board, endUse, place);
  const few = tooFew(board, evidence);
  if (few !== null) return { call: 'probe-again', reasons: [few, said(board)] };
  if (averagePct < endUse.minPct && (highPct < endUse.minPct || !moreWouldTell(board, endUse)))
    return tooDry(board, endUse);
  if (!fits(board, endUse)) return unsure(board, endUse, place);
  return shellAndCore(board, endUse, place) ?? ready(board, endUse);
}

/** "9.4 %, between 8.5 and 10.3 %" as the number behind a reason. */
function said({ estimate }: BoardEstimate): string {
  return `The average is ${pct(estimate.averagePct)}, and lies between ${pct(estimate.lowPct)} and ${pct(estimate.highPct)} with 90 % probability.`;
}

function tooFew({ estimate }: BoardEstimate, { board }: BoardEvidence): string | null {
  const short = board.lengthMm !== null && board.lengthMm < 2 * END_CLEARANCE_MM + 150;
  const wanted = short ? 1 : FEWEST_PER_DEPTH;
  const shell = Math.max(0, wanted - estimate.countedShell);
  const core = Math.max(0, wanted - estimate.countedCore);
  if (shell === 0 && core === 0) return null;
  const missing = [
    ...(shell > 0 ? [`${shell} more at the shell`] : []),
    ...(core > 0 ? [`${core} more at the core`] : []),
  ].join(' and ');
  return `Too few sound readings, ${estimate.countedShell} of the shell and ${estimate.countedCore} of the core: take ${missing}${short ? '' : ', at two places along the board'}.`;
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
  const surely = lowPct > endUse.maxPct ? '' : ' probably';
  const wet = `At ${pct(averagePct)} it is${surely} too wet for ${endUse.name}, which wants ${rangeOf(endUse)}.`;
  const { emcPct } = place;
  if (emcPct === null)
    return {
      call: 'keep-drying',
      reasons: [wet, `How dry ${place.name} can make it is not known: enter the air there.`],
    };
  const airSuffices = emcPct + NEVER_QUITE_PCT <= endUse.maxPct;
  if (airSuffices)
    return {
      call: 'keep-drying',
      reasons: [
        wet,
        `The air in ${place.name} in the month it was probed can bring it down to about ${pct(emcPct)}.`,
      ],
    };
  const margin = Math.min(2.5, Math.max(NOT_WORTH_WAITING_PCT, highPct - averagePct));
  if (averagePct <= emcPct + margin)
    return {
      call: 'bring-in',
      reasons: [
        `At ${pct(averagePct)} it is about as dry as the air in ${place.name} makes it in the month it was probed (${pct(emcPct)}), and ${endUse.name} wants ${rangeOf(endUse)}: waiting there gains nothing, it needs drier air.`,
        said(board),
      ],
    };
  return {
    call: 'keep-drying',
    reasons: [
      wet,
      `The air in ${place.name} in the month it was probed can bring it down to about ${pct(emcPct)}; after that it must come into drier air.`,
    ],
  };
}

function tooDry(board: BoardEstimate, endUse: EndUse): ReasonedCall {
  return {
    call: 'probe-again',
    reasons: [
      `At ${pct(board.estimate.averagePct)} it is too dry for ${endUse.name}, which wants ${rangeOf(endUse)}: let it take up moisture in the air where it will be used, then probe again.`,
      said(board),
    ],
  };
}

function unsure(board: BoardEstimate, endUse: EndUse, place: PlaceFacts): ReasonedCall {
  const more = extra(board, endUse);
  const close = `At ${pct(board.estimate.averagePct)} it is too close to call for ${endUse.name}, which wants ${rangeOf(endUse)}.`;
  if (more !== null)
    return {
      call: 'probe-again',
      reasons: [
        `${close} Take ${more} more at the shell and ${more} more at the core, at places not probed yet.`,
        said(board),
      ],
    };
  const { averagePct, highPct } = board.estimate;
  const upper =
    highPct > endUse.maxPct && averagePct > endUse.maxPct - GUARD_SHARE * (endUse.maxPct - endUse.minPct);
  if (upper && place.emcPct !== null && place.emcPct < averagePct - NEVER_QUITE_PCT)
    return {
      call: 'keep-drying',
      reasons: [
        `${close} It may still be as wet as ${pct(highPct)}, and the air in ${place.name} in the month it was probed takes it further down, to about ${pct(place.emcPct)}.`,
        MORE_PINS_DO_NOT_HELP,
      ],
    };
  if (upper && place.emcPct !== null && place.emcPct + NEVER_QUITE_PCT > endUse.maxPct)
    return {
      call: 'bring-in',
      reasons: [
        `${close} It may still be as wet as ${pct(highPct)}, and the air in ${place.name} in the month it was probed makes it no drier than ${pct(place.emcPct)}.`,
        MORE_PINS_DO_NOT_HELP,
      ],
    };
  return { call: 'probe-again', reasons: [close, said(board), MORE_PINS_DO_NOT_HELP] };
}

const MORE_PINS_DO_NOT_HELP =
  'More pins will not narrow it, because the meter and the wood are uncertain, not the spots: an oven-dry check of this wood with this meter will.';

function shellAndCore({ estimate }: BoardEstimate, endUse: EndUse, place: PlaceFacts): ReasonedCall | null {
  const { differencePct, averagePct } = estimate;
  if (differencePct === null || Math.abs(differencePct) <= endUse.maxShellCorePct) return null;
  const wetter = differencePct > 0 ? 'core' : 'shell';
  return {
    call: 'keep-drying',
    reasons: [
      `The ${wetter} is ${pct(Math.abs(differencePct))} wetter than the ${wetter === 'core' ? 'shell' : 'core'}, and ${endUse.name} allows ${pct(endUse.maxShellCorePct)}: let it even out in ${place.name} before it is worked.`,
      `The average, ${pct(averagePct)}, already lies within ${rangeOf(endUse)}.`,
    ],
  };
}

function ready(board: BoardEstimate, endUse: EndUse): ReasonedCall {
  const { averagePct, lowPct, highPct, differencePct } = board.estimate;
  const inside = lowPct >= endUse.minPct && highPct <= endUse.maxPct;
  const between = `${pct(lowPct)} to ${pct(highPct)}`;
  return {
    call: 'ready',
    reasons: [
      inside || endUse.minPct === 0
        ? `At ${pct(averagePct)} (${between}) it lies within what ${endUse.name} wants, ${rangeOf(endUse)}.`
        : `At ${pct(averagePct)} it lies in the middle half of what ${endUse.name} wants, ${rangeOf(endUse)}; the meter cannot tell it closer than ${between}.`,
      ...(differencePct === null
        ? []
        : [
            `Shell and core differ by ${pct(Math.abs(differencePct))}, and ${pct(endUse.maxShellCorePct)} is allowed.`,
          ]),
    ],
  };
}
