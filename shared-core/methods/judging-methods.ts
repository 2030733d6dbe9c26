import { DRY_ENOUGH_CORE_PCT, DRY_ENOUGH_FOR_INDOORS_PCT } from '../probing/calls/call-here.ts';
import { HARM, MOST_EXTRA, SURE, THIN_MM, UNEVEN_HARM, WORTH_PROBING } from '../probing/calls/decide.ts';
import { UNEVEN_BY_POINTS } from '../probing/calls/gradient-of-drying.ts';
import { MODEL_SCORE } from '../probing/calls/half-probed.ts';
import { NEVER_QUITE_PCT } from '../probing/calls/never-quite.ts';
import { YOUNG_DAYS } from '../probing/calls/next-step.ts';
import { OLD_AFTER_DAYS } from '../probing/calls/old-readings.ts';
import { ENOUGH } from '../probing/calls/spots-read.ts';
import { WORTH_MOVING_DAYS } from '../probing/calls/where-to.ts';
import { boardsForMean, boardsForNoneWet } from '../probing/plan/sample-size.ts';
import { CERTAINTY, ONE_IN } from '../probing/plan/stack-call.ts';
import { MEAN_MARGIN_PCT, USUAL_SPREAD_PCT } from '../probing/plan/stack-plan.ts';
import {
  CORE_BEHIND_POINTS,
  GRADIENT_SHARE,
  MOST_HISTORY_SD_POINTS,
  SHELL_SD_POINTS,
} from '../probing/readings/core-history.ts';
import { COVERAGE, WETTEST_CORE_PCT, WIDEST_ESTIMATE_POINTS } from '../probing/readings/estimate.ts';
import { DOUBT_SDS } from '../probing/readings/prior-now.ts';
import { SHELL_AHEAD, SHORTEST_PINS_MM, STEEPNESS } from '../probing/readings/profile-posterior.ts';
import { STEADY_PCT, WINDOW_MS } from '../probing/readings/settle.ts';
import { SLIP_ABOVE_PCT, SLIP_BELOW_PCT } from '../probing/readings/typing-slip.ts';
import { CHANGE_SCORE, OUTLIER_SCORE } from '../probing/suspicions/board-suspicions.ts';
import { DIFFERENCE_SCORE } from '../probing/suspicions/difference-score.ts';
import { BETWEEN_ROUNDS_PCT, LONGEST_DAYS } from '../probing/suspicions/expectation.ts';
import {
  BOARD_SCORE,
  FEWEST_BOARDS,
  LEAST_DRIFT_PCT,
  OWN_PACE,
  ROUND_SCORE,
} from '../probing/suspicions/round-suspicions.ts';
import { FEWEST_MATES, LEAST_SHIFT_PCT, OTHER_SPREAD } from '../probing/suspicions/species-suspicions.ts';
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
      message('methods.calls.ready', {
        harmChancePct: 100 * HARM,
        unevenPoints: UNEVEN_BY_POINTS,
        unevenChancePct: 100 * UNEVEN_HARM,
      }),
      message('methods.calls.others'),
      message('methods.calls.core-open', {
        sureChancePct: 100 * SURE,
        widestPoints: WIDEST_ESTIMATE_POINTS,
        wettestPct: WETTEST_CORE_PCT,
      }),
      message('methods.calls.spots', { enough: ENOUGH, surelyChancePct: 50 * (1 + COVERAGE) }),
      message('methods.calls.later-part', { intervalChancePct: 100 * COVERAGE, modelSds: MODEL_SCORE }),
      message('methods.calls.more', {
        mostExtra: MOST_EXTRA,
        worthChancePct: 100 * WORTH_PROBING,
        sureChancePct: 100 * SURE,
      }),
      message('methods.calls.unused'),
      message('methods.calls.by-forecast', { youngDays: YOUNG_DAYS, gainDays: WORTH_MOVING_DAYS }),
      message('methods.calls.old', { oldDays: OLD_AFTER_DAYS, sureChancePct: 100 * SURE }),
      message('methods.calls.profile', {
        steepness: STEEPNESS.mean,
        steepnessSd: STEEPNESS.sd,
        aheadPoints: SHELL_AHEAD.settled.points,
        movedPoints: SHELL_AHEAD.moved.points,
      }),
      message('methods.calls.history'),
      message('methods.calls.history-sd', {
        behindPoints: CORE_BEHIND_POINTS,
        shellPoints: SHELL_SD_POINTS,
        gradientSharePct: 100 * GRADIENT_SHARE,
        mostPoints: MOST_HISTORY_SD_POINTS,
      }),
      message('methods.calls.depth', { shortestMm: SHORTEST_PINS_MM, thinMm: THIN_MM }),
      message('methods.calls.half-point', {
        nearPoints: NEVER_QUITE_PCT,
        indoorsLimitPct: DRY_ENOUGH_FOR_INDOORS_PCT,
        coreLimitPct: DRY_ENOUGH_CORE_PCT,
      }),
    ],
    message('methods.calls.source'),
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
        message('methods.calls.target-of', { targetRange: { minPct, maxPct } }),
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
      message('methods.questionable.board', {
        outlierScore: OUTLIER_SCORE,
        differenceScore: DIFFERENCE_SCORE,
      }),
      message('methods.questionable.first-round', { doubtSds: DOUBT_SDS }),
      message('methods.questionable.jump', { changeScore: CHANGE_SCORE, longestDays: LONGEST_DAYS }),
      message('methods.questionable.round', {
        boards: FEWEST_BOARDS,
        boardScore: BOARD_SCORE,
        roundScore: ROUND_SCORE,
        driftPoints: LEAST_DRIFT_PCT,
      }),
      message('methods.questionable.species', {
        mates: FEWEST_MATES,
        shiftPoints: LEAST_SHIFT_PCT,
        spread: Math.round(10 * OTHER_SPREAD) / 10,
      }),
      message('methods.questionable.slip', {
        leastLimitPct: SLIP_BELOW_PCT,
        mostLimitPct: SLIP_ABOVE_PCT,
      }),
      message('methods.questionable.ohm-slip', { differenceScore: DIFFERENCE_SCORE }),
      message('methods.questionable.rest', { restPoints: STEADY_PCT, windowSeconds: WINDOW_MS / 1000 }),
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
      message('methods.shrinkage.cup'),
      message('methods.shrinkage.weight'),
      message('methods.shrinkage.sample-board'),
      message('methods.shrinkage.board-feet'),
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
    [
      message('methods.sample.none-wet', { oneIn: ONE_IN }),
      message('methods.sample.mean', { spreadPoints: USUAL_SPREAD_PCT }),
      message('methods.sample.next'),
    ],
    message('methods.sample.source'),
    {
      caption: message('methods.sample.caption', { certaintyPct: 100 * CERTAINTY }),
      heads: [
        message('methods.sample.stack'),
        message('methods.sample.for-none-wet', { oneIn: ONE_IN }),
        message('methods.sample.for-mean', { marginPoints: MEAN_MARGIN_PCT }),
      ],
      rows: [10, 30, 60, 120, 500].map((boards) => [
        boards,
        boardsForNoneWet(boards, 1 / ONE_IN, CERTAINTY),
        boardsForMean(boards, USUAL_SPREAD_PCT, MEAN_MARGIN_PCT, CERTAINTY, null),
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
