import { isShownAbove } from '../../wood/moisture/shown-points.ts';
import { type Message, message } from '../../words/message.ts';
import { correctedIn } from '../readings/corrected-reading.ts';
import { areDepthsUnknown } from '../readings/depth-read.ts';
import { type BoardEstimate, type CountedReading, estimateBoard } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import type { JudgedReading, Suspicion } from '../readings/reading.ts';
import { countSpots } from '../readings/spots.ts';
import { RAINED_ON } from '../suspicions/board-suspicions.ts';
import { DAMAGED } from '../suspicions/reading-suspicions.ts';
import type { RoundSuspicion } from '../suspicions/round-suspicions.ts';
import { isQuestionable, isRefused, suspicionsOf } from '../suspicions/suspicion.ts';
import { callAboveScale } from './above-scale.ts';
import type { Assessment, MadeCall, SpotsRead } from './assessment.ts';
import { turnedByCold } from './cold.ts';
import { decide } from './decide.ts';
import { callHalfProbed, coreUnreadSince, isDecided } from './half-probed.ts';
import { type Counted, ENOUGH, halfProbed } from './spots-read.ts';

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
  const corrected = evidence.readings.map((reading) => ({
    reading,
    corrected: correctedIn(reading, evidence),
  }));
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
  const { emcPct, kind: placeKind, isNewHere = null } = evidence.place;
  const known = { thicknessMm, emcPct, placeKind, isNewHere, history: evidence.profile ?? null };
  const all = estimateBoard(countedOf(readings), known);
  const sound = readings.filter((each) => !isQuestionable(each.suspicions));
  const firm = sound.length === readings.length ? all : estimateBoard(countedOf(sound), known);
  const called = callOf(all, firm, readings, evidence);
  const cold = turnedByCold(called.call, countedOf(sound), evidence, known);
  return {
    ...(cold === null ? called : { ...called, ...probeAgain(cold) }),
    readings,
    estimate: all?.estimate ?? null,
  };
}

function countedOf(readings: readonly JudgedReading[]): (CountedReading & { reading: JudgedReading })[] {
  return readings.flatMap((reading) => {
    const { mcPct, standardUncertaintyPct } = reading.corrected;
    return reading.counts && mcPct !== null && standardUncertaintyPct !== null
      ? [{ reading, mcPct, standardUncertaintyPct }]
      : [];
  });
}

/** Of a full round before it of fewer readings, as of a notebook's page, no later one is a part. */
function isLaterPart(read: number, { planned }: SpotsRead, { fullRound }: BoardEvidence): boolean {
  return fullRound != null && read < planned && read <= countedIn(fullRound.estimate);
}

type Called = Pick<Assessment, 'call' | 'reasons' | 'reliable' | 'spotsRead'>;

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
  const half = halfProbed(all?.estimate ?? NOTHING_COUNTED, evidence);
  if (
    half !== null &&
    (isLaterPart(countSpots(included), half, evidence) || (all !== null && !isDecided(firm, evidence)))
  )
    return callHalfProbed({ half, firm, heaviest, evidence });
  if (all === null) {
    const damaged = included.some(({ isDamaged }) => isDamaged) ? DAMAGED : undefined;
    return { ...nothingCounts(readings, heaviest ?? damaged), ...unreliable };
  }
  if (firm === null) return { ...everythingQuestionable(all, included, heaviest), ...unreliable };

  const { differencePct } = all.estimate;
  // How wet it is comes out in some dry days, whatever its core alone would make of it.
  if (differencePct !== null && suspicions.some(({ rule }) => rule === RAINED_ON))
    return {
      ...probeAgain(message('call.rained-on', { differencePoints: Math.abs(differencePct) })),
      ...unreliable,
    };
  const made = callAboveScale(decide(firm, evidence), firm.estimate, readings, evidence);
  if (made.call === 'ready' && countedIn(all.estimate) < ENOUGH)
    return { ...probeAgain(message('call.one-reading')), reliable: firm.estimate, spotsRead: null };
  const decided = withHeld(atScaleEnd(withRemedy(made, suspicions), suspicions), suspicions);
  const unread = coreUnreadSince(all.estimate, evidence);
  if (half === null && unread !== null && decided.call !== 'ready' && isShellDry(firm, evidence))
    return callHalfProbed({ half: unread, firm, heaviest, evidence });
  const questionable = readings.filter((each) => each.counts && isQuestionable(each.suspicions)).length;
  const relied = { reliable: firm.estimate, spotsRead: null };
  if (questionable === 0 || heaviest === undefined) return { ...decided, ...relied };
  const { call, reasons } = decided;
  if (call === 'keep-drying' || call === 'probe-again' || call === decide(all, evidence).call)
    return {
      call,
      reasons: [...reasons, message('call.questionable-unused', { questionable, why: heaviest.why })],
      ...relied,
    };
  const { averagePct: firmPct, averageIs } = firm.estimate;
  const allPct = all.estimate.averagePct;
  const wouldBe = message('call.would-be', {
    questionable,
    callName: message(`call.${call}`),
    firmPct,
    allPct,
  });
  return {
    call: 'probe-again',
    reasons: [
      message('call.would-change', { questionable }),
      ...(averageIs === 'read' ? [wouldBe] : []),
      ...adviceOf(heaviest),
    ],
    ...unreliable,
  };
}

const countedIn = ({ countedShell, countedAverage, countedCore }: Counted): number =>
  countedShell + countedAverage + countedCore;

const NOTHING_COUNTED = { countedShell: 0, countedAverage: 0, countedCore: 0 };
const unreliable = { reliable: null, spotsRead: null };

/** What is as dry as a meter shows or drier, said beside the call. */
function atScaleEnd(decided: MadeCall, suspicions: readonly Suspicion[]): MadeCall {
  const { whatToDo, why } =
    suspicions.find((each) => each.whatToDo.code === 'suspicion.outside-meter-range.repeated.do') ?? {};
  return why && whatToDo ? { ...decided, reasons: [...decided.reasons, why, whatToDo] } : decided;
}

/** Whether all that was read is dry enough; the shell alone may still leave the average open. */
const isShellDry = ({ estimate: { shellPct } }: BoardEstimate, { endUse }: BoardEvidence): boolean =>
  shellPct !== null && !isShownAbove(shellPct, endUse.maxPct);

/** A temperature not measured is the cheapest uncertainty to remove. */
function withRemedy(decided: MadeCall, suspicions: readonly Suspicion[]): MadeCall {
  const unknown = suspicions.find(
    (each) => each.rule === 'temperature-unknown' || each.rule === 'temperature-of-air',
  );
  if (decided.call !== 'probe-again' || unknown === undefined) return decided;
  return { ...decided, reasons: [...decided.reasons, ...adviceOf(unknown)] };
}

/** A meter that holds its value shows it at every spot, so a call made from that alone says so. */
function withHeld({ call, reasons }: MadeCall, suspicions: readonly Suspicion[]): MadeCall {
  const held = suspicions.find((each) => each.rule === 'equal-values');
  if (call === 'probe-again') return { call, reasons };
  const [decisive, ...others] = reasons;
  return { call, reasons: [decisive, ...adviceOf(held), ...others] };
}

function nothingCounts(readings: readonly JudgedReading[], refused: Suspicion | undefined): MadeCall {
  if (readings.length === 0) return probeAgain(message('call.no-readings'));
  if (refused === undefined) return probeAgain(message('call.none-left'));
  return probeAgain(message('call.none-usable', { why: refused.why }), refused.whatToDo);
}

function everythingQuestionable(
  { estimate }: BoardEstimate,
  included: readonly JudgedReading[],
  suspicion: Suspicion | undefined,
): MadeCall {
  const { averagePct, averageIs, shellPct } = estimate;
  const unreliable =
    averageIs === 'read' || shellPct === null
      ? message('call.all-questionable', { averagePct })
      : areDepthsUnknown(included)
        ? message('call.all-questionable', { averagePct: shellPct })
        : message('call.shell-questionable', { shellPct });
  return probeAgain(unreliable, ...adviceOf(suspicion));
}

const probeAgain = (...reasons: MadeCall['reasons']): MadeCall => ({ call: 'probe-again', reasons });

const adviceOf = (suspicion: Suspicion | undefined): Message[] =>
  suspicion === undefined ? [] : [suspicion.why, suspicion.whatToDo];
