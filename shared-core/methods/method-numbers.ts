import { DRY_ENOUGH_CORE_PCT, DRY_ENOUGH_FOR_INDOORS_PCT } from '../probing/calls/call-here.ts';
import { HARM, THIN_MM, UNEVEN_HARM, WORTH_PROBING } from '../probing/calls/decide.ts';
import { UNEVEN_BY_POINTS } from '../probing/calls/gradient-of-drying.ts';
import { NEVER_QUITE_PCT } from '../probing/calls/never-quite.ts';
import { ONE_IN } from '../probing/plan/stack-call.ts';
import { GRADIENT_SHARE, MOST_HISTORY_SD_POINTS, SHELL_SD_POINTS } from '../probing/readings/core-history.ts';
import { ASSUMED_PIN_MM, AVERAGE_FROM, AVERAGE_TO } from '../probing/readings/plan-basis.ts';
import { SHORTEST_PINS_MM, STEEPNESS, SURFACE_SD_PCT } from '../probing/readings/profile-posterior.ts';
import { END_CLEARANCE_MM } from '../probing/readings/spots.ts';
import { BETWEEN_ROUNDS_PCT } from '../probing/suspicions/expectation.ts';
import { OWN_PACE } from '../probing/suspicions/round-suspicions.ts';
import { COLDEST_C } from '../wood/climate/emc.ts';
import { ABOVE_MEANS_SD } from '../wood/climate/outdoor-month.ts';
import { LONGEST_HISTORY_DAYS } from '../wood/drying/board-history.ts';
import { ANCHOR_MC_PCT } from '../wood/drying/drying-model.ts';
import { averageGravity, modelErrorPct, ownAirSdPct, priorPace } from '../wood/drying/history-fit.ts';
import { LEAST_FOR_A_LINE } from '../wood/moisture/calibration.ts';
import {
  LEAST_METER_PCT,
  SPECIES_SPREAD,
  USUAL_METER_SD_PCT,
} from '../wood/moisture/correction-uncertainty.ts';
import { FIBER_SATURATION_PCT, FROZEN_FROM_PCT } from '../wood/moisture/fiber-saturation.ts';
import { PRIOR_SD_PCT } from '../wood/moisture/meter-bias.ts';
import { SCATTER_DEGREES } from '../wood/moisture/spot-scatter.ts';
import { NEUTRAL_TEMP_C, WOOD_TEMP_LIMIT_C, WOOD_TEMP_RANGE_C } from '../wood/moisture/temperature.ts';
import { usualRingRadiusMm } from '../wood/movement/warp.ts';
import { type Message, message } from '../words/message.ts';

/** Every prior and limit that the core exports, by the name of its constant: a test holds that none is missing. */
export const methodNumbers: readonly { constant: string; means: Message; value: number }[] = [
  {
    constant: 'FIBER_SATURATION_PCT',
    means: message('methods.numbers.fiber-saturation'),
    value: FIBER_SATURATION_PCT,
  },
  { constant: 'FROZEN_FROM_PCT', means: message('methods.numbers.frozen'), value: FROZEN_FROM_PCT },
  { constant: 'LEAST_METER_PCT', means: message('methods.numbers.least-meter'), value: LEAST_METER_PCT },
  { constant: 'NEUTRAL_TEMP_C', means: message('methods.numbers.neutral-temp'), value: NEUTRAL_TEMP_C },
  {
    constant: 'WOOD_TEMP_RANGE_C',
    means: message('methods.numbers.range-least'),
    value: WOOD_TEMP_RANGE_C.min,
  },
  {
    constant: 'WOOD_TEMP_RANGE_C',
    means: message('methods.numbers.range-most'),
    value: WOOD_TEMP_RANGE_C.max,
  },
  {
    constant: 'WOOD_TEMP_LIMIT_C',
    means: message('methods.numbers.limit-least'),
    value: WOOD_TEMP_LIMIT_C.min,
  },
  {
    constant: 'WOOD_TEMP_LIMIT_C',
    means: message('methods.numbers.limit-most'),
    value: WOOD_TEMP_LIMIT_C.max,
  },
  {
    constant: 'LEAST_FOR_A_LINE',
    means: message('methods.numbers.least-for-a-line'),
    value: LEAST_FOR_A_LINE,
  },
  { constant: 'SCATTER_DEGREES', means: message('methods.numbers.scatter-degrees'), value: SCATTER_DEGREES },
  { constant: 'COLDEST_C', means: message('methods.numbers.coldest'), value: COLDEST_C },
  { constant: 'ABOVE_MEANS_SD', means: message('methods.numbers.above-means-sd'), value: ABOVE_MEANS_SD },
  { constant: 'modelErrorPct', means: message('methods.numbers.model-error'), value: modelErrorPct },
  {
    constant: 'priorPace',
    means: message('methods.numbers.diffusivity-median'),
    value: priorPace.diffusivity.unknown.median,
  },
  {
    constant: 'priorPace',
    means: message('methods.numbers.diffusivity-sd'),
    value: priorPace.diffusivity.logSd,
  },
  {
    constant: 'priorPace',
    means: message('methods.numbers.surface-median'),
    value: priorPace.surface.median,
  },
  { constant: 'priorPace', means: message('methods.numbers.surface-sd'), value: priorPace.surface.logSd },
  { constant: 'priorPace', means: message('methods.numbers.exponent-mean'), value: priorPace.exponent.mean },
  { constant: 'priorPace', means: message('methods.numbers.exponent-sd'), value: priorPace.exponent.sd },
  { constant: 'averageGravity', means: message('methods.numbers.average-gravity'), value: averageGravity },
  { constant: 'ownAirSdPct', means: message('methods.numbers.own-air'), value: ownAirSdPct },
  { constant: 'ANCHOR_MC_PCT', means: message('methods.numbers.anchor'), value: ANCHOR_MC_PCT },
  {
    constant: 'LONGEST_HISTORY_DAYS',
    means: message('methods.numbers.longest-history'),
    value: LONGEST_HISTORY_DAYS,
  },
  { constant: 'usualRingRadiusMm', means: message('methods.numbers.ring-radius'), value: usualRingRadiusMm },
  { constant: 'NEVER_QUITE_PCT', means: message('methods.numbers.never-quite'), value: NEVER_QUITE_PCT },
  {
    constant: 'DRY_ENOUGH_FOR_INDOORS_PCT',
    means: message('methods.numbers.dry-enough'),
    value: DRY_ENOUGH_FOR_INDOORS_PCT,
  },
  {
    constant: 'DRY_ENOUGH_CORE_PCT',
    means: message('methods.numbers.dry-enough-core'),
    value: DRY_ENOUGH_CORE_PCT,
  },
  { constant: 'END_CLEARANCE_MM', means: message('methods.numbers.end-clearance'), value: END_CLEARANCE_MM },
  { constant: 'ONE_IN', means: message('methods.numbers.one-in'), value: ONE_IN },
  { constant: 'OWN_PACE', means: message('methods.numbers.own-pace'), value: OWN_PACE },
  {
    constant: 'BETWEEN_ROUNDS_PCT',
    means: message('methods.numbers.between-rounds'),
    value: BETWEEN_ROUNDS_PCT,
  },
  { constant: 'HARM', means: message('methods.numbers.harm'), value: HARM },
  { constant: 'UNEVEN_HARM', means: message('methods.numbers.uneven-harm'), value: UNEVEN_HARM },
  { constant: 'UNEVEN_BY_POINTS', means: message('methods.numbers.uneven-by'), value: UNEVEN_BY_POINTS },
  { constant: 'WORTH_PROBING', means: message('methods.numbers.worth-probing'), value: WORTH_PROBING },
  { constant: 'THIN_MM', means: message('methods.numbers.thin'), value: THIN_MM },
  { constant: 'ASSUMED_PIN_MM', means: message('methods.numbers.assumed-pin'), value: ASSUMED_PIN_MM },
  { constant: 'AVERAGE_FROM', means: message('methods.numbers.average-least'), value: AVERAGE_FROM },
  {
    constant: 'AVERAGE_TO',
    means: message('methods.numbers.average-most'),
    value: Math.round(100 * AVERAGE_TO) / 100,
  },
  { constant: 'STEEPNESS', means: message('methods.numbers.steepness'), value: STEEPNESS.mean },
  { constant: 'STEEPNESS', means: message('methods.numbers.steepness-sd'), value: STEEPNESS.sd },
  { constant: 'SHELL_SD_POINTS', means: message('methods.numbers.shell-sd'), value: SHELL_SD_POINTS },
  { constant: 'GRADIENT_SHARE', means: message('methods.numbers.gradient-share'), value: GRADIENT_SHARE },
  {
    constant: 'MOST_HISTORY_SD_POINTS',
    means: message('methods.numbers.most-history-sd'),
    value: MOST_HISTORY_SD_POINTS,
  },
  { constant: 'SURFACE_SD_PCT', means: message('methods.numbers.surface-sd-points'), value: SURFACE_SD_PCT },
  { constant: 'USUAL_METER_SD_PCT', means: message('methods.numbers.meter-sd'), value: USUAL_METER_SD_PCT },
  { constant: 'SPECIES_SPREAD', means: message('methods.numbers.species-spread'), value: SPECIES_SPREAD },
  { constant: 'PRIOR_SD_PCT', means: message('methods.numbers.bias-meter'), value: PRIOR_SD_PCT.meter },
  { constant: 'PRIOR_SD_PCT', means: message('methods.numbers.bias-species'), value: PRIOR_SD_PCT.species },
  { constant: 'PRIOR_SD_PCT', means: message('methods.numbers.bias-both'), value: PRIOR_SD_PCT.both },
  { constant: 'PRIOR_SD_PCT', means: message('methods.numbers.bias-board'), value: PRIOR_SD_PCT.board },
  { constant: 'SHORTEST_PINS_MM', means: message('methods.numbers.shortest-pins'), value: SHORTEST_PINS_MM },
];
