import { THIN_MM } from '../probing/calls/decide.ts';
import { USUAL_TEMP_RANGE_C } from '../probing/readings/assumed-temp.ts';
import {
  ASSUMED_PIN_MM,
  AVERAGE_AT,
  AVERAGE_FROM,
  AVERAGE_TO,
  MIDDLE_FROM,
} from '../probing/readings/plan-basis.ts';
import { EXPONENTS } from '../probing/readings/profile-posterior.ts';
import { END_CLEARANCE_MM } from '../probing/readings/spots.ts';
import { LEAST_CHECKS, LEAST_SPREAD_PCT } from '../wood/moisture/calibration.ts';
import { correctReading } from '../wood/moisture/correction.ts';
import { COLD_PER_K, LEAST_METER_PCT, MOST_COLD_PCT } from '../wood/moisture/correction-uncertainty.ts';
import { FIBER_SATURATION_PCT, FROZEN_FROM_PCT } from '../wood/moisture/fiber-saturation.ts';
import { PRIOR_BOARDS, PRIOR_SD_PCT } from '../wood/moisture/meter-bias.ts';
import { curveRangePct, LEAST_FALL } from '../wood/moisture/resistance.ts';
import { resistanceCurves } from '../wood/moisture/resistance-curves.ts';
import { USUAL_SCALE } from '../wood/moisture/scale.ts';
import { SCATTER_DEGREES, spotScatterPct } from '../wood/moisture/spot-scatter.ts';
import {
  atWoodTempPct,
  james,
  pfaffGarrahan,
  vtt,
  WOOD_TEMP_LIMIT_C,
  WOOD_TEMP_RANGE_C,
} from '../wood/moisture/temperature.ts';
import { builtInSpecies } from '../wood/species/built-in.ts';
import { message } from '../words/message.ts';
import { type MethodCell, type MethodPart, partOf } from './method-part.ts';

/** As meters are commonly calibrated, °C: 70 °F. */
const COMMON_C = 21.1;

const toHundredth = (value: number): number => Math.round(100 * value) / 100;

export const correctionMethods = (): MethodPart =>
  partOf(
    'correction',
    message('methods.correction.title'),
    [
      message('methods.correction.steps'),
      message('methods.correction.scale'),
      message('methods.correction.usual', { usualTempC: USUAL_SCALE.tempC }),
      message('methods.correction.temperature'),
      message('methods.correction.formulas'),
      message('methods.correction.scale-temperature'),
      message('methods.correction.range', {
        leastTempC: WOOD_TEMP_RANGE_C.min,
        mostTempC: WOOD_TEMP_RANGE_C.max,
        lowestTempC: WOOD_TEMP_LIMIT_C.min,
        highestTempC: WOOD_TEMP_LIMIT_C.max,
      }),
      message('methods.correction.frozen', {
        frozenPct: FROZEN_FROM_PCT,
        coldPoints: 10 * COLD_PER_K,
        coldStepK: 10,
        mostPoints: MOST_COLD_PCT,
      }),
      message('methods.correction.of-air', {
        outdoorsStepK: USUAL_TEMP_RANGE_C.outdoors,
        roomStepK: USUAL_TEMP_RANGE_C['heated-room'],
      }),
      message('methods.correction.uncertainty'),
      message('methods.correction.wet', { saturationPct: FIBER_SATURATION_PCT, leastPct: LEAST_METER_PCT }),
      message('methods.correction.checks', { spreadPoints: LEAST_SPREAD_PCT, leastChecks: LEAST_CHECKS }),
      message('methods.correction.learned', {
        meterPoints: PRIOR_SD_PCT.meter,
        speciesPoints: PRIOR_SD_PCT.species,
        bothPoints: PRIOR_SD_PCT.both,
        boardPoints: PRIOR_SD_PCT.board,
        priorBoards: PRIOR_BOARDS,
      }),
    ],
    message('methods.correction.source'),
    {
      caption: message('methods.correction.temperature-caption', { shownPct: 16, commonTempC: COMMON_C }),
      heads: [
        message('methods.correction.wood'),
        message('methods.correction.james'),
        message('methods.correction.pfaff'),
        message('methods.correction.vtt'),
      ],
      rows: [-20, -10, 0, 10, 21, 30, 40, 50].map((tempC) => [
        message('methods.temperature', { cellTempC: tempC }),
        ...[james, pfaffGarrahan, vtt].map((published) =>
          toHundredth(atWoodTempPct(published, 16, tempC, COMMON_C) - 16),
        ),
      ]),
    },
    {
      caption: message('methods.correction.uncertainty-caption', { shownPct: 12, commonTempC: COMMON_C }),
      heads: [message('methods.correction.case'), message('methods.correction.points')],
      rows: [
        [message('methods.correction.with-curve'), uncertainty('walnut-black', COMMON_C)],
        [message('methods.correction.without-curve'), uncertainty('cherry-black', COMMON_C)],
        [message('methods.correction.no-temperature'), uncertainty('walnut-black', null)],
      ],
    },
  );

function uncertainty(speciesId: string, woodTempC: number | null): MethodCell {
  const species = builtInSpecies.find(({ id }) => id === speciesId);
  if (!species) throw new RangeError(`No built-in species ${speciesId}.`);
  const { standardUncertaintyPct } = correctReading({
    value: 12,
    unit: 'pct',
    woodTempC,
    species,
    scale: { kind: 'usual' },
  });
  return toHundredth(standardUncertaintyPct ?? Number.NaN);
}

export const curveMethods = (): MethodPart =>
  partOf(
    'curves',
    message('methods.curves.title'),
    [
      message('methods.curves.what', { fallSharePct: 100 * (1 - 10 ** -LEAST_FALL) }),
      message('methods.curves.none'),
    ],
    message('methods.curves.source'),
    {
      caption: message('methods.curves.caption'),
      heads: [
        message('methods.curves.curve'),
        message('methods.curves.range'),
        message('methods.curves.at'),
        message('methods.curves.source-head'),
      ],
      rows: [...resistanceCurves.values()].map((curve) => {
        const { minPct, maxPct } = curveRangePct(curve);
        return [
          curve.name,
          message('methods.curves.between', { curveRange: { minPct, maxPct } }),
          message('methods.temperature', { cellTempC: curve.tempC }),
          curve.source,
        ];
      }),
    },
  );

export const depthMethods = (): MethodPart =>
  partOf(
    'depth',
    message('methods.depth.title'),
    [
      message('methods.depth.parabola'),
      message('methods.depth.pins', { pinMm: ASSUMED_PIN_MM, thinMm: THIN_MM }),
      message('methods.depth.driven', {
        fromSharePct: 100 * AVERAGE_FROM,
        toSharePct: 100 * AVERAGE_TO,
        atSharePct: 100 * AVERAGE_AT,
        middleSharePct: 100 * MIDDLE_FROM,
      }),
      message('methods.depth.profile', { exponents: [...EXPONENTS] }),
      message('methods.depth.interval'),
      message('methods.depth.ends', { clearanceDistanceMm: END_CLEARANCE_MM }),
      message('methods.depth.scatter', { dryPoints: spotScatterPct(0), degrees: SCATTER_DEGREES }),
    ],
    message('methods.depth.source'),
  );
