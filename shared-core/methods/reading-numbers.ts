import { CORE_FROM, WETTEST_CORE_PCT, WIDEST_ESTIMATE_POINTS } from '../probing/readings/estimate.ts';
import { MOST_OFF } from '../probing/readings/meter-check.ts';
import { ENTERED_AT_ONCE_DAYS, NEW_HERE_DAYS } from '../probing/readings/new-here.ts';
import { ASSUMED_PIN_MM, AVERAGE_FROM, AVERAGE_TO } from '../probing/readings/plan-basis.ts';
import {
  AIR_SD_PCT,
  ALWAYS_FULLY_IN,
  SHELL_AHEAD,
  SHORTEST_PINS_MM,
  SPELL_SD_PCT,
  STEEPNESS,
  UNKNOWN_AIR,
} from '../probing/readings/profile-posterior.ts';
import { END_CLEARANCE_MM } from '../probing/readings/spots.ts';
import { LEAST_FOR_A_LINE } from '../wood/moisture/calibration.ts';
import {
  COMPENSATION_UNKNOWN_SHARE,
  LEAST_METER_PCT,
  NEAR_THE_ENDS,
  OUTSIDE_SHARE,
  SCALE_UNKNOWN_SHARE,
  SPECIES_SPREAD,
  UNKNOWN_TEMP_SPAN_K,
  USUAL_METER_SD_PCT,
} from '../wood/moisture/correction-uncertainty.ts';
import { FIBER_SATURATION_PCT, FROZEN_FROM_PCT } from '../wood/moisture/fiber-saturation.ts';
import { PRIOR_SD_PCT } from '../wood/moisture/meter-bias.ts';
import { SCATTER_DEGREES } from '../wood/moisture/spot-scatter.ts';
import { NEUTRAL_TEMP_C, WOOD_TEMP_LIMIT_C, WOOD_TEMP_RANGE_C } from '../wood/moisture/temperature.ts';
import type { NumberUsed } from './number-used.ts';

/** Priors and limits of a reading: the meter, the correction, the depth. */
export const readingNumbers: readonly NumberUsed[] = [
  ['FIBER_SATURATION_PCT', 'fiber-saturation', FIBER_SATURATION_PCT],
  ['FROZEN_FROM_PCT', 'frozen', FROZEN_FROM_PCT],
  ['LEAST_METER_PCT', 'least-meter', LEAST_METER_PCT],
  ['NEUTRAL_TEMP_C', 'neutral-temp', NEUTRAL_TEMP_C, 'temperature'],
  ['WOOD_TEMP_RANGE_C', 'range-least', WOOD_TEMP_RANGE_C.min, 'temperature'],
  ['WOOD_TEMP_RANGE_C', 'range-most', WOOD_TEMP_RANGE_C.max, 'temperature'],
  ['WOOD_TEMP_LIMIT_C', 'limit-least', WOOD_TEMP_LIMIT_C.min, 'temperature'],
  ['WOOD_TEMP_LIMIT_C', 'limit-most', WOOD_TEMP_LIMIT_C.max, 'temperature'],
  ['LEAST_FOR_A_LINE', 'least-for-a-line', LEAST_FOR_A_LINE],
  ['SCATTER_DEGREES', 'scatter-degrees', SCATTER_DEGREES],
  ['END_CLEARANCE_MM', 'end-clearance', END_CLEARANCE_MM, 'distance'],
  ['ASSUMED_PIN_MM', 'assumed-pin', ASSUMED_PIN_MM, 'length'],
  ['AVERAGE_FROM', 'average-least', AVERAGE_FROM],
  ['AVERAGE_TO', 'average-most', Math.round(100 * AVERAGE_TO) / 100],
  ['STEEPNESS', 'steepness', STEEPNESS.mean],
  ['STEEPNESS', 'steepness-sd', STEEPNESS.sd],
  ['SHELL_AHEAD', 'shell-ahead', SHELL_AHEAD.settled.points],
  ['SHELL_AHEAD', 'shell-ahead-moved', SHELL_AHEAD.moved.points],
  ['SHELL_AHEAD', 'shell-ahead-unknown', SHELL_AHEAD.unknown.points],
  ['SHELL_AHEAD', 'shell-ahead-sd', SHELL_AHEAD.unknown.sdPoints],
  ['NEW_HERE_DAYS', 'new-here', NEW_HERE_DAYS],
  ['ENTERED_AT_ONCE_DAYS', 'entered-at-once', ENTERED_AT_ONCE_DAYS],
  ['AIR_SD_PCT', 'known-air-sd', AIR_SD_PCT],
  ['SPELL_SD_PCT', 'spell-outdoors', SPELL_SD_PCT.outdoors],
  ['SPELL_SD_PCT', 'spell-shed', SPELL_SD_PCT['open-shed']],
  ['SPELL_SD_PCT', 'spell-shop', SPELL_SD_PCT.shop],
  ['SPELL_SD_PCT', 'spell-room', SPELL_SD_PCT['heated-room']],
  ['USUAL_METER_SD_PCT', 'meter-sd', USUAL_METER_SD_PCT],
  ['SPECIES_SPREAD', 'species-spread', SPECIES_SPREAD],
  ['SCALE_UNKNOWN_SHARE', 'scale-unknown', SCALE_UNKNOWN_SHARE],
  ['COMPENSATION_UNKNOWN_SHARE', 'compensation-unknown', COMPENSATION_UNKNOWN_SHARE],
  ['UNKNOWN_TEMP_SPAN_K', 'unknown-temp', UNKNOWN_TEMP_SPAN_K, 'temperature-step'],
  ['OUTSIDE_SHARE', 'outside', OUTSIDE_SHARE],
  ['NEAR_THE_ENDS', 'wet-limit', NEAR_THE_ENDS.wetPct],
  ['NEAR_THE_ENDS', 'wet-adds', NEAR_THE_ENDS.wet],
  ['NEAR_THE_ENDS', 'free-adds', NEAR_THE_ENDS.free],
  ['NEAR_THE_ENDS', 'dry-adds', NEAR_THE_ENDS.dry],
  ['PRIOR_SD_PCT', 'bias-meter', PRIOR_SD_PCT.meter],
  ['PRIOR_SD_PCT', 'bias-species', PRIOR_SD_PCT.species],
  ['PRIOR_SD_PCT', 'bias-both', PRIOR_SD_PCT.both],
  ['PRIOR_SD_PCT', 'bias-board', PRIOR_SD_PCT.board],
  ['MOST_OFF', 'most-off', MOST_OFF.pct],
  ['MOST_OFF', 'most-off-ohms', MOST_OFF.ohm],
  ['CORE_FROM', 'middle-counts', CORE_FROM],
  ['WIDEST_ESTIMATE_POINTS', 'widest-estimate', WIDEST_ESTIMATE_POINTS],
  ['WETTEST_CORE_PCT', 'wettest-estimate', WETTEST_CORE_PCT],
  ['UNKNOWN_AIR', 'unknown-air', UNKNOWN_AIR.abovePct],
  ['UNKNOWN_AIR', 'unknown-air-sd', UNKNOWN_AIR.sdPct],
  ['ALWAYS_FULLY_IN', 'always-fully-in', ALWAYS_FULLY_IN],
  ['SHORTEST_PINS_MM', 'shortest-pins', SHORTEST_PINS_MM, 'length'],
];
