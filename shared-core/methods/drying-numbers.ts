import { COLDEST_C, DAMPEST_RH } from '../wood/climate/emc.ts';
import { AIR_SPREADS } from '../wood/climate/learned-air.ts';
import { HUMIDITY_SD, WOOD_EMC_SD_PCT } from '../wood/climate/monthly-air.ts';
import { ABOVE_MEANS_SD } from '../wood/climate/outdoor-month.ts';
import { SWINGS_OUTDOORS } from '../wood/climate/swings.ts';
import { LONGEST_HISTORY_DAYS } from '../wood/drying/board-history.ts';
import { USUAL_C } from '../wood/drying/diffusivity.ts';
import { aheadLogSd } from '../wood/drying/forecast.ts';
import {
  averageGravity,
  MODEL_ERROR_DEGREES,
  modelErrorPct,
  priorPace,
  THICKNESS_POWER,
} from '../wood/drying/history-fit.ts';
import { SURFACE_SPREADS } from '../wood/drying/learned-surface.ts';
import { ANCHOR_MC_PCT } from '../wood/drying/model/drying-law.ts';
import { GREEN } from '../wood/moisture/most-water.ts';
import { usualRingRadiusMm } from '../wood/movement/warp.ts';
import type { NumberUsed } from './number-used.ts';

/** Priors and limits of the air, the drying model and the board itself. */
export const dryingNumbers: readonly NumberUsed[] = [
  ['COLDEST_C', 'coldest', COLDEST_C, 'temperature'],
  ['DAMPEST_RH', 'dampest', DAMPEST_RH],
  ['ABOVE_MEANS_SD', 'above-means-sd', ABOVE_MEANS_SD],
  ['modelErrorPct', 'model-error', modelErrorPct],
  ['MODEL_ERROR_DEGREES', 'model-error-degrees', MODEL_ERROR_DEGREES],
  ['priorPace', 'diffusivity-median', priorPace.diffusivity.unknown.median],
  ['priorPace', 'diffusivity-sd', priorPace.diffusivity.logSd],
  ['priorPace', 'surface-median', priorPace.surface.median],
  ['priorPace', 'surface-sd', priorPace.surface.logSd],
  ['priorPace', 'exponent-mean', priorPace.exponent.mean],
  ['priorPace', 'exponent-sd', priorPace.exponent.sd],
  ['averageGravity', 'average-gravity', averageGravity],
  ['HUMIDITY_SD', 'humidity-sd', 100 * HUMIDITY_SD],
  ['WOOD_EMC_SD_PCT', 'wood-emc-sd', WOOD_EMC_SD_PCT],
  ['SWINGS_OUTDOORS', 'day-swings', SWINGS_OUTDOORS.sdPct],
  ['AIR_SPREADS', 'kind-share', AIR_SPREADS.kindShare],
  ['AIR_SPREADS', 'air-between-boards-sd', AIR_SPREADS.betweenBoards],
  ['AIR_SPREADS', 'shared-air-sd', AIR_SPREADS.shared],
  ['SURFACE_SPREADS', 'surface-kind-share', SURFACE_SPREADS.kindShare],
  ['SURFACE_SPREADS', 'surface-between-boards-sd', SURFACE_SPREADS.betweenBoards],
  ['SURFACE_SPREADS', 'shared-surface-sd', SURFACE_SPREADS.shared],
  ['aheadLogSd', 'ahead', aheadLogSd],
  ['USUAL_C', 'usual-drying-temp', USUAL_C, 'temperature'],
  ['THICKNESS_POWER', 'thickness', THICKNESS_POWER],
  ['ANCHOR_MC_PCT', 'anchor', ANCHOR_MC_PCT],
  ['LONGEST_HISTORY_DAYS', 'longest-history', LONGEST_HISTORY_DAYS],
  ['GREEN', 'green', GREEN.share],
  ['GREEN', 'green-sd', GREEN.logSd],
  ['usualRingRadiusMm', 'ring-radius', usualRingRadiusMm, 'length'],
];
