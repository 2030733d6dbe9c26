import { DRY_ENOUGH_CORE_PCT, DRY_ENOUGH_FOR_INDOORS_PCT } from '../probing/calls/call-here.ts';
import { HARM, THIN_MM, UNEVEN_HARM } from '../probing/calls/decide.ts';
import { NEVER_QUITE_PCT } from '../probing/calls/never-quite.ts';
import { boardsForMean, boardsForNoneWet } from '../probing/plan/sample-size.ts';
import { ONE_IN } from '../probing/plan/stack-call.ts';
import { GRADIENT_SHARE, MOST_HISTORY_SD_POINTS, SHELL_SD_POINTS } from '../probing/readings/core-history.ts';
import { SHORTEST_PINS_MM, STEEPNESS } from '../probing/readings/profile-posterior.ts';
import { BETWEEN_ROUNDS_PCT } from '../probing/suspicions/expectation.ts';
import { OWN_PACE } from '../probing/suspicions/round-suspicions.ts';
import { constantMassRules } from '../wood/moisture/oven-dry.ts';
import { RING_ANGLE_DEG } from '../wood/movement/shrinkage.ts';
import { usualRingRadiusMm } from '../wood/movement/warp.ts';
import { builtInEndUses } from '../wood/species/built-in.ts';
import { message } from '../words/message.ts';
import { type MethodPart, partOf } from './method-part.ts';

export const callMethods = (): MethodPart =>
  partOf(
    'calls',
    message('methods.calls.title'),
    [
      message('methods.calls.ready', { harmChancePct: 100 * HARM, unevenChancePct: 100 * UNEVEN_HARM }),
      message('methods.calls.others'),
      message('methods.calls.profile', { steepness: STEEPNESS.mean, steepnessSd: STEEPNESS.sd }),
      message('methods.calls.history', {
        shellPoints: SHELL_SD_POINTS,
        gradientPct: 100 * GRADIENT_SHARE,
        mostPoints: MOST_HISTORY_SD_POINTS,
      }),
      message('methods.calls.depth', { shortestMm: SHORTEST_PINS_MM, thinMm: THIN_MM }),
      message('methods.calls.half-point', {
        nearPoints: NEVER_QUITE_PCT,
        indoorsPct: DRY_ENOUGH_FOR_INDOORS_PCT,
        indoorsCorePct: DRY_ENOUGH_CORE_PCT,
      }),
    ],
    null,
    {
      caption: message('methods.calls.caption'),
      heads: [
        message('methods.calls.use'),
        message('methods.calls.target'),
        message('methods.calls.tolerance'),
        message('methods.calls.shell-core'),
        message('methods.calls.source-head'),
      ],
      rows: builtInEndUses.map(({ name, minPct, maxPct, tolerancePoints, maxShellCorePct, source }) => [
        name,
        `${minPct}–${maxPct}%`,
        tolerancePoints,
        maxShellCorePct ?? message('methods.calls.any'),
        source,
      ]),
    },
  );

export const questionableMethods = (): MethodPart =>
  partOf(
    'questionable',
    message('methods.questionable.title'),
    [
      message('methods.questionable.what'),
      message('methods.questionable.first-round'),
      message('methods.questionable.between', {
        paceSharePct: 100 * OWN_PACE,
        betweenPoints: BETWEEN_ROUNDS_PCT,
      }),
    ],
    message('methods.questionable.source'),
  );

export const shrinkageMethods = (): MethodPart =>
  partOf(
    'shrinkage',
    message('methods.shrinkage.title'),
    [
      message('methods.shrinkage.formula'),
      message('methods.shrinkage.coefficients'),
      message('methods.shrinkage.rings', {
        flatDegrees: RING_ANGLE_DEG.flat,
        riftDegrees: RING_ANGLE_DEG.rift,
        quarterDegrees: RING_ANGLE_DEG.quarter,
        radiusMm: usualRingRadiusMm,
      }),
      message('methods.shrinkage.oven', {
        astmHours: constantMassRules['ASTM D4442'].hours,
        enHours: constantMassRules['EN 13183-1'].hours,
      }),
    ],
    message('methods.shrinkage.source'),
  );

export const sampleMethods = (): MethodPart =>
  partOf(
    'sample',
    message('methods.sample.title'),
    [message('methods.sample.none-wet', { oneIn: ONE_IN }), message('methods.sample.mean')],
    message('methods.sample.source'),
    {
      caption: message('methods.sample.caption'),
      heads: [
        message('methods.sample.stack'),
        message('methods.sample.for-none-wet'),
        message('methods.sample.for-mean'),
      ],
      rows: [10, 30, 60, 120, 500].map((boards) => [
        boards,
        boardsForNoneWet(boards, 1 / ONE_IN, 0.9),
        boardsForMean(boards, 1.5, 1, 0.9, null),
      ]),
    },
  );

export const cautions = (): MethodPart =>
  partOf(
    'cautions',
    message('methods.cautions.title'),
    [
      message('methods.cautions.pins'),
      message('methods.cautions.oven'),
      message('methods.cautions.structure'),
      message('methods.cautions.insects'),
    ],
    null,
  );
