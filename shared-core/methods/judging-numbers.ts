import { DRY_ENOUGH_CORE_PCT, DRY_ENOUGH_FOR_INDOORS_PCT } from '../probing/calls/call-here.ts';
import { HARM, THIN_MM, UNEVEN_HARM, WORTH_PROBING } from '../probing/calls/decide.ts';
import { UNEVEN_BY_POINTS } from '../probing/calls/gradient-of-drying.ts';
import { NEVER_QUITE_PCT } from '../probing/calls/never-quite.ts';
import { OLD_AFTER_DAYS } from '../probing/calls/old-readings.ts';
import { WORTH_MOVING_POINTS } from '../probing/calls/where-to.ts';
import { ONE_IN } from '../probing/plan/stack-call.ts';
import {
  CORE_BEHIND_POINTS,
  GRADIENT_SHARE,
  MOST_HISTORY_SD_POINTS,
  SHELL_SD_POINTS,
} from '../probing/readings/core-history.ts';
import { DOUBT_SDS } from '../probing/readings/prior-now.ts';
import { BETWEEN_ROUNDS_PCT } from '../probing/suspicions/expectation.ts';
import { OWN_PACE } from '../probing/suspicions/round-suspicions.ts';
import type { NumberUsed } from './number-used.ts';

/** Priors and limits of calls, flags and plans. */
export const judgingNumbers: readonly NumberUsed[] = [
  ['NEVER_QUITE_PCT', 'never-quite', NEVER_QUITE_PCT],
  ['DRY_ENOUGH_FOR_INDOORS_PCT', 'dry-enough', DRY_ENOUGH_FOR_INDOORS_PCT],
  ['DRY_ENOUGH_CORE_PCT', 'dry-enough-core', DRY_ENOUGH_CORE_PCT],
  ['ONE_IN', 'one-in', ONE_IN],
  ['OLD_AFTER_DAYS', 'old-after', OLD_AFTER_DAYS],
  ['OWN_PACE', 'own-pace', OWN_PACE],
  ['BETWEEN_ROUNDS_PCT', 'between-rounds', BETWEEN_ROUNDS_PCT],
  ['DOUBT_SDS', 'doubt-sds', DOUBT_SDS],
  ['HARM', 'harm', HARM],
  ['UNEVEN_HARM', 'uneven-harm', UNEVEN_HARM],
  ['UNEVEN_BY_POINTS', 'uneven-by', UNEVEN_BY_POINTS],
  ['WORTH_PROBING', 'worth-probing', WORTH_PROBING],
  ['WORTH_MOVING_POINTS', 'worth-moving', WORTH_MOVING_POINTS],
  ['THIN_MM', 'thin', THIN_MM, 'length'],
  ['CORE_BEHIND_POINTS', 'core-behind', CORE_BEHIND_POINTS],
  ['SHELL_SD_POINTS', 'shell-sd', SHELL_SD_POINTS],
  ['GRADIENT_SHARE', 'gradient-share', GRADIENT_SHARE],
  ['MOST_HISTORY_SD_POINTS', 'most-history-sd', MOST_HISTORY_SD_POINTS],
];
