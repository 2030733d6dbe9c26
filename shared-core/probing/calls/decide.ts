/** The call from one estimate, by the harm that a wrong one would do. */
import { normalCdf, Z_90 } from '../../wood/maths/gaussian.ts';
import { isShownAbove, shownPoints } from '../../wood/moisture/shown-points.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Message, message, type PctRange } from '../../words/message.ts';
import { areDepthsUnknown } from '../readings/depth-read.ts';
import type { BoardEstimate } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import {
  chanceAverageAbove,
  chanceDifferenceAbove,
  type ProfilePosterior,
} from '../readings/profile-posterior.ts';
import type { MadeCall } from './assessment.ts';
import { isGradientOfDrying, UNEVEN_BY_POINTS } from './gradient-of-drying.ts';
import { shrinkageToCome } from './shrinkage-to-come.ts';
import { spotsLacking } from './spots-read.ts';

/** Ready is called where the chance that it is too wet to work is below this. */
export const HARM = 0.1;
/** The same for a shell–core difference that does harm, where no pins are known to have reached the core, or the shell: nobody sees it before the wood is cut. */
export const UNEVEN_HARM = 0.05;
/** More readings are asked for where they change the call at least this often. Common practice, no source. */
export const WORTH_PROBING = 0.2;
/** More readings of each depth than this are not asked for. */
export const MOST_EXTRA = 4;
/** In a board up to this thick pins at a fifth to a third of it tell the average, and no more is asked. Common practice, no source. */
export const THIN_MM = 30;
/** Surer than this a side is not called probable. */
export const SURE = 0.9;

/** The call from one estimate, as if no reading in it were questionable. */
export function decide(board: BoardEstimate, evidence: BoardEvidence): MadeCall {
  const { endUse } = evidence;
  const { averagePct } = board.estimate;
  const few = tooFew(board, evidence);
  if (few !== null && !isSurelyTooWet(board.estimate, endUse))
    return probeAgain(
      few,
      ...(isRead(board) ? [message('call.likely', { likelyInterval: likely(board) })] : []),
    );
  if (few === null && isCoreOpen(board, evidence)) return withoutCore(board, evidence);

  const isTooWet = isShownAbove(averagePct, endUse.maxPct);
  const mayBeTooWet = !isTooWet && chanceOfHarm(board, endUse) >= HARM;
  const isTooDry = isShownAbove(endUse.minPct, averagePct) && !endUse.minIsAdvice;
  if (isTooWet || mayBeTooWet || isTooDry) {
    const each = few === null ? moreReadings(board, endUse) : null;
    if (each !== null) return tooClose(board, endUse, each);
    return isTooDry && !mayBeTooWet ? tooDry(board, evidence) : tooWet(board, evidence);
  }
  return tooUneven(board, evidence) ?? ready(board, evidence);
}

/** With a chance of 95 %, and not by an estimate alone. */
export const isSurelyTooWet = (
  { averageIs, lowPct, shellPct }: BoardEstimate['estimate'],
  { maxPct }: Pick<EndUse, 'maxPct'>,
): boolean =>
  lowPct > maxPct && (averageIs === 'read' || (shellPct !== null && isShownAbove(shellPct, maxPct)));

const isRead = ({ estimate }: BoardEstimate): boolean => estimate.averageIs === 'read';

/**
 * Whether nothing tells the core of a thick board, or how wet a board is inside: no pins and no history. Firewood has no
 * history: it dries from its ends as well, and was split on some day since.
 */
const isCoreOpen = (board: BoardEstimate, evidence: BoardEvidence): boolean =>
  (!evidence.profile || isFirewood(evidence)) &&
  (!isRead(board) || (!isThin(evidence) && board.estimate.inCore === 0));

/**
 * Without the core a board is called too wet or too dry only where that is nearly sure; else the core decides, whatever the
 * use, and more readings of the shell would not.
 */
function withoutCore(board: BoardEstimate, evidence: BoardEvidence): MadeCall {
  const { endUse } = evidence;
  const { averagePct, shellPct } = board.estimate;
  const readPct = isRead(board) ? averagePct : shellPct;
  const wetChance = chanceAverageAbove(board.posterior, endUse.maxPct);
  if (wetChance >= SURE && readPct !== null && isShownAbove(readPct, endUse.maxPct))
    return tooWet(board, evidence);
  const dryChance = 1 - chanceAverageAbove(board.posterior, endUse.minPct);
  if (dryChance >= SURE && readPct !== null && isShownAbove(endUse.minPct, readPct) && !endUse.minIsAdvice)
    return tooDry(board, evidence);
  return coreNotRead(board, evidence);
}

const probeAgain = (...reasons: MadeCall['reasons']): MadeCall => ({ call: 'probe-again', reasons });
const likely = ({ estimate }: BoardEstimate): PctRange => estimate.likelyInterval;
const targetOf = ({ minPct, maxPct }: EndUse): PctRange => ({ minPct, maxPct });
const toChancePct = (chance: number): number => Math.min(99, Math.max(1, Math.round(100 * chance)));

/** Chance that it is wetter than the use can take. */
const chanceOfHarm = ({ posterior }: BoardEstimate, { maxPct, tolerancePoints }: EndUse): number =>
  chanceAverageAbove(posterior, maxPct + tolerancePoints);

function tooFew({ estimate }: BoardEstimate, evidence: BoardEvidence): Message | null {
  const { shell, average, core } = spotsLacking(estimate, evidence);
  const spots = Math.max(shell, average, core);
  if (spots === 0) return null;
  const missing = [
    ...(average > 0 ? [message('call.more-average', { count: average })] : []),
    ...(shell > 0 ? [message('call.more-shell', { count: shell })] : []),
    ...(core > 0 ? [message('call.more-core', { count: core })] : []),
  ];
  return message('call.too-few', { missing, spots });
}

/**
 * How many more readings of each depth would change this call often enough to be worth taking; null where not even
 * `MOST_EXTRA` would. Before they are taken, the average that they will lead to is as uncertain as they would make it
 * surer: normal, about the one of now (the preposterior distribution: Raiffa and Schlaifer, Applied Statistical Decision
 * Theory, 1961; from memory).
 */
function moreReadings({ estimate, posterior }: BoardEstimate, endUse: EndUse): number | null {
  const { averagePct, countedShell, countedAverage, countedCore } = estimate;
  const { spotsPct, sharedPct } = posterior;
  const have = Math.max(1, ...[countedAverage, Math.min(countedShell, countedCore)]);
  for (let more = 1; more <= MOST_EXTRA; more += 1) {
    const leftPct = spotsPct * Math.sqrt(have / (have + more));
    const movesPct = Math.sqrt(spotsPct ** 2 - leftPct ** 2);
    const marginPct = Z_HARM * Math.hypot(leftPct, sharedPct);
    const highestPct = Math.min(endUse.maxPct, endUse.maxPct + endUse.tolerancePoints - marginPct);
    const lowestPct = endUse.minIsAdvice ? 0 : endUse.minPct;
    const becomesReady =
      normalCdf((highestPct - averagePct) / movesPct) - normalCdf((lowestPct - averagePct) / movesPct);
    if (becomesReady >= WORTH_PROBING) return more;
  }
  return null;
}
/** Normal deviate that is passed with the chance `HARM`. */
const Z_HARM = 1.2816;

function tooClose(board: BoardEstimate, endUse: EndUse, each: number): MadeCall {
  const { averagePct } = board.estimate;
  return probeAgain(
    message('call.too-close', { averagePct, targetRange: targetOf(endUse), each }),
    message('call.likely', { likelyInterval: likely(board) }),
  );
}

/** For a board that its readings put on one side of a limit, where more of them would not make that surer. */
const lessThanSure = (chance: number, side: 'too-wet' | 'too-dry'): Message[] =>
  chance >= SURE
    ? []
    : [
        message(`call.chance-${side}`, { sideChancePct: toChancePct(chance) }),
        message('call.more-will-not-help'),
      ];

const isDepthKnown = ({ readings }: BoardEvidence): boolean =>
  !areDepthsUnknown(readings.filter(({ excluded }) => excluded === null));

/** Whether it is to dry on where it is or to be brought in, its place decides (`call-here.ts`). */
function tooWet(board: BoardEstimate, evidence: BoardEvidence): MadeCall {
  const { endUse } = evidence;
  const { averagePct, shellPct } = board.estimate;
  const targetRange = targetOf(endUse);
  if (!isRead(board) && shellPct !== null && isShownAbove(shellPct, endUse.maxPct))
    return {
      call: 'keep-drying',
      reasons: [
        isDepthKnown(evidence)
          ? message('call.shell-too-wet', { shellPct, targetRange })
          : message('call.read-too-wet', { mcPct: shellPct, targetRange }),
      ],
    };
  if (!isShownAbove(averagePct, endUse.maxPct))
    return {
      call: 'keep-drying',
      reasons: [
        message('call.may-be-too-wet', {
          averagePct,
          harmChancePct: toChancePct(chanceOfHarm(board, endUse)),
          workableLimitPct: endUse.maxPct + endUse.tolerancePoints,
        }),
        message('call.more-will-not-help'),
      ],
    };
  const chance = chanceAverageAbove(board.posterior, endUse.maxPct);
  const wet = message(chance >= SURE ? 'call.too-wet' : 'call.probably-too-wet', { averagePct, targetRange });
  const gradient = isGradientOfDrying(board.estimate, endUse)
    ? [message('call.gradient-of-drying', { differencePoints: shownDifference(board.estimate) })]
    : [];
  return { call: 'keep-drying', reasons: [wet, ...lessThanSure(chance, 'too-wet'), ...gradient] };
}

function tooDry(board: BoardEstimate, evidence: BoardEvidence): MadeCall {
  const { endUse } = evidence;
  const { averagePct, shellPct } = board.estimate;
  if (!isRead(board) && shellPct !== null && isShownAbove(endUse.minPct, shellPct))
    return {
      call: 'too-dry',
      reasons: [
        isDepthKnown(evidence)
          ? message('call.shell-below-target', { shellPct, targetRange: targetOf(endUse) })
          : message('call.read-below-target', { mcPct: shellPct, targetRange: targetOf(endUse) }),
      ],
    };
  const chance = 1 - chanceAverageAbove(board.posterior, endUse.minPct);
  return {
    call: 'too-dry',
    reasons: [
      message('call.below-target', { averagePct, targetRange: targetOf(endUse) }),
      message('call.likely', { likelyInterval: likely(board) }),
      ...lessThanSure(chance, 'too-dry'),
    ],
  };
}

const isThin = ({ board }: BoardEvidence): boolean => board.thicknessMm <= THIN_MM;

const isFirewood = ({ endUse }: BoardEvidence): boolean => endUse.cautions.includes('firewood');

const whyNoCore = (evidence: BoardEvidence): Message => {
  if (evidence.readings.some(({ depthFrom, spot }) => depthFrom === 'plan' && spot.depth === 'core'))
    return message('call.core-depth-unknown');
  return message(isFirewood(evidence) ? 'call.core-not-split' : 'call.core-not-reached');
};

/** The way to the core comes first, because that is what to do. */
const coreNotRead = (board: BoardEstimate, evidence: BoardEvidence): MadeCall =>
  probeAgain(whyNoCore(evidence), ...inTarget(board, evidence.endUse));

/** Said only of an average that was read, and that is within. */
function inTarget(board: BoardEstimate, endUse: EndUse): Message[] {
  const { averagePct } = board.estimate;
  const isWithin = !isShownAbove(endUse.minPct, averagePct) && !isShownAbove(averagePct, endUse.maxPct);
  return isRead(board) && isWithin
    ? [message('call.average-in-target', { averagePct, targetRange: targetOf(endUse) })]
    : [];
}

function tooUneven(board: BoardEstimate, evidence: BoardEvidence): MadeCall | null {
  const { endUse, place } = evidence;
  const { maxShellCorePct: allowedPoints } = endUse;
  if (allowedPoints === null) return null;
  const { estimate, posterior } = board;
  const { differencePct } = estimate;
  const chance = chanceDifferenceAbove(posterior, allowedPoints + UNEVEN_BY_POINTS);
  if (chance < (isDifferenceRead(board, evidence) ? HARM : UNEVEN_HARM)) return null;
  if (isCoreDryAnyway(board, endUse, allowedPoints)) return null;
  if (estimate.inCore > 0 && differencePct !== null && Math.abs(differencePct) > allowedPoints)
    return {
      call: 'keep-drying',
      reasons: [
        message(differencePct > 0 ? 'call.core-wetter' : 'call.shell-wetter', {
          differencePoints: shownDifference(estimate),
          allowedPoints,
          placeName: place.name,
        }),
        ...inTarget(board, endUse),
      ],
    };
  const uneven = message('call.may-be-uneven', {
    unevenChancePct: toChancePct(chance),
    allowedPoints,
  });
  return estimate.inCore > 0
    ? { call: 'keep-drying', reasons: [uneven, ...inTarget(board, endUse)] }
    : probeAgain(whyNoCore(evidence), uneven, ...inTarget(board, endUse));
}

/**
 * Whether a core that nobody read does not matter: where drier is fine, else such a board is too dry, and the average lies
 * so far below the target that even a core that is wetter than allowed would be within it. Nobody cuts a dry board to
 * learn that.
 */
const isCoreDryAnyway = (
  { estimate: { averagePct, averageIs, inCore } }: BoardEstimate,
  { minPct, maxPct }: EndUse,
  allowedPoints: number,
): boolean =>
  averageIs === 'read' &&
  inCore === 0 &&
  isShownAbove(minPct, averagePct) &&
  averagePct + allowedPoints + UNEVEN_BY_POINTS <= maxPct;

/** Whether pins read shell and core, at depths that are known. */
const isDifferenceRead = ({ estimate }: BoardEstimate, { readings }: BoardEvidence): boolean =>
  estimate.inCore > 0 &&
  estimate.differencePct !== null &&
  readings.every(({ depthFrom, excluded }) => excluded !== null || depthFrom !== 'plan');

const shownDifference = ({ shellPct, corePct }: BoardEstimate['estimate']): number =>
  Math.abs(shownPoints(corePct ?? 0, shellPct ?? 0));

function ready(board: BoardEstimate, evidence: BoardEvidence): MadeCall {
  const { averagePct } = board.estimate;
  const { endUse } = evidence;
  const shrinkage = shrinkageToCome(averagePct, evidence);
  return {
    call: 'ready',
    reasons: [
      message(isShownAbove(endUse.minPct, averagePct) ? 'call.below-target-serves' : 'call.within-target', {
        averagePct,
        targetRange: targetOf(endUse),
        likelyInterval: likely(board),
      }),
      ...differenceOf(board, evidence),
      ...(shrinkage === null ? [] : [shrinkage]),
    ],
  };
}

/** What is known of the shell–core difference of a ready board. */
function differenceOf({ estimate, posterior }: BoardEstimate, { endUse, profile }: BoardEvidence): Message[] {
  const { maxShellCorePct: allowedPoints } = endUse;
  if (allowedPoints === null) return [];
  if (estimate.inCore > 0 && estimate.differencePct !== null)
    return [differenceRead(shownDifference(estimate), allowedPoints, posterior)];
  if (profile)
    return [
      message('call.difference-by-history', {
        likelyPointsInterval: {
          minPct: Math.max(0, profile.differencePct - Z_90 * profile.differenceSdPct),
          maxPct: Math.max(0, profile.differencePct + Z_90 * profile.differenceSdPct),
        },
        allowedPoints,
      }),
    ];
  return [message(estimate.inCore > 0 ? 'call.shell-not-judged' : 'call.core-not-judged')];
}

/** It may be a little above the limit: then the meter's error makes harm unlikely. */
function differenceRead(
  differencePoints: number,
  allowedPoints: number,
  posterior: ProfilePosterior,
): Message {
  if (differencePoints <= allowedPoints)
    return message('call.difference-allowed', { differencePoints, allowedPoints });
  return message('call.difference-just-over', {
    differencePoints,
    allowedPoints,
    unevenChancePct: toChancePct(chanceDifferenceAbove(posterior, allowedPoints + UNEVEN_BY_POINTS)),
  });
}
