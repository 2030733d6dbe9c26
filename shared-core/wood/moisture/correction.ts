import type { Species } from '../species/species.ts';
import type { Corrected, CorrectionWarning, MeterScale, ReadingUnit } from './corrected.ts';
import { estimate } from './correction-steps.ts';
import { LEAST_METER_PCT, openShares, uncertaintyPct } from './correction-uncertainty.ts';
import { FIBER_SATURATION_PCT, FROZEN_FROM_PCT } from './fiber-saturation.ts';
import type { LearnedBias } from './meter-bias.ts';
import { mostWaterPct } from './most-water.ts';
import {
  NEUTRAL_TEMP_C,
  publishedCorrections,
  WOOD_TEMP_LIMIT_C,
  WOOD_TEMP_RANGE_C,
  withinLimit,
} from './temperature.ts';

/** The user's own oven-dry checks as a line: reading on the basis scale = a MC + b (see `calibration.ts`). */
export interface OwnCalibration {
  a: number;
  b: number;
  /** Standard error of an MC found through the line, % MC. */
  standardErrorPct: number;
}

/** A wood temperature that nobody measured, °C, and one standard deviation of it. */
export interface AssumedTemp {
  tempC: number;
  sdK: number;
}

export interface ReadingToCorrect {
  value: number;
  /** `pct` as shown on the meter's scale, `ohm` as resistance between the pins. */
  unit: ReadingUnit;
  /** null: not known. */
  woodTempC: number | null;
  /** What it may be where it is not known, by the air around it; null: nothing is known of that either. */
  airTemp?: AssumedTemp | null;
  species: Species;
  /** What a shown % means. */
  scale: MeterScale;
  /** The meter measures the wood's temperature, or asks for it, and shows a % corrected for it; null: not known. */
  compensatesTemp?: boolean | null;
  /** What a check found the meter to be off by: points, or decades of ohms; above 0 where it shows more. Left out: 0. */
  meterOff?: number;
  /** Standard uncertainty of the meter from one board to the next, % MC; null: the usual one. */
  meterSdPct?: number | null;
  ownCalibration?: OwnCalibration | null;
  /** What the yard's own boards taught; not used beside `ownCalibration`, which is of the same checks. */
  learned?: LearnedBias | null;
}

/** Where no specific gravity is known: no species that is sawn holds more water, % MC. */
const MOST_WATER_OF_ANY_PCT = 400;
/** Between these a resistance can come from wood: below, the pins touch metal or each other, Ω. */
const WOOD_OHMS = { min: 100, max: 1e15 } as const;

const isOutOfRange = (tempC: number): boolean =>
  tempC < WOOD_TEMP_RANGE_C.min || tempC > WOOD_TEMP_RANGE_C.max;

const REFUSED: Corrected = {
  mcPct: null,
  steps: [],
  standardUncertaintyPct: null,
  warnings: ['not-a-reading'],
};

/**
 * Turns one reading into moisture content.
 *
 * The method follows from what is known, best first:
 * 1. the person's own oven-dry checks of this species with this meter, on the meter's scale, corrected for temperature;
 * 2. ohms: the species' curve, then temperature by the resistance route;
 * 3. % of the board's own species: temperature only, by the published formula, or nothing where the meter does that;
 * 4. % of another: temperature, back to resistance on the scale's curve, then the species' curve;
 * 5. no curve: temperature, then the species' linear coefficients a and b of the usual scale: MC = (M - b) / a (ohms
 *    are first read on the scale's curve);
 * 6. nothing known of the species: temperature only, with a warning.
 * Before all, what a check of the meter found it to be off by is taken off. After 2 to 6, what boards of known moisture content taught of the meter and the species (`meter-bias.ts`).
 *
 * Nothing is clamped: a value outside a range is given with a warning. Only what cannot be a moisture content (not
 * a number, negative, more than this species can hold, a resistance that wood cannot have) is refused, with null.
 * Frozen wood is computed and marked: below 0 °C the value is less exact, and above 22 % no value is valid.
 *
 * @throws RangeError if the scale or the species names a curve that does not exist
 */
export function correctReading(input: ReadingToCorrect): Corrected {
  const { value, unit, species } = input;
  const mostPct =
    species.basicSpecificGravity === null
      ? MOST_WATER_OF_ANY_PCT
      : mostWaterPct(species.basicSpecificGravity);
  const possible =
    unit === 'pct' ? value >= 0 && value <= mostPct : value >= WOOD_OHMS.min && value <= WOOD_OHMS.max;
  if (!Number.isFinite(value) || !possible) return REFUSED;

  const warnings: CorrectionWarning[] = [];
  let woodTempC = input.woodTempC;
  const isCompensated = unit === 'pct' && input.compensatesTemp === true;
  if (woodTempC === null || !Number.isFinite(woodTempC)) {
    woodTempC = null;
    if (!isCompensated) {
      warnings.push(input.airTemp ? 'temperature-of-air' : 'temperature-unknown');
      if (input.airTemp && isOutOfRange(input.airTemp.tempC)) warnings.push('temperature-out-of-range');
    }
  } else {
    if (isOutOfRange(woodTempC)) {
      warnings.push('temperature-out-of-range');
      // So far out that the formula is refused: left as it is, and as unsure as if it were not known.
      if (woodTempC < WOOD_TEMP_LIMIT_C.min || woodTempC > WOOD_TEMP_LIMIT_C.max) woodTempC = null;
    }
  }

  const tempC = tempOf(input);
  const estimated = estimate(input, tempC);
  const { mcPct, steps, beyondCurvePct } = estimated;
  if (!(mcPct >= 0 && mcPct <= mostPct)) return REFUSED;

  const open = openShares(input);
  if (!input.ownCalibration && open.speciesShare > 0) warnings.push('no-species-correction');
  if ((tempC ?? NEUTRAL_TEMP_C) <= 0) warnings.push(mcPct > FROZEN_FROM_PCT ? 'frozen' : 'below-freezing');
  if (mcPct < LEAST_METER_PCT) warnings.push('below-meter-range');
  if (mcPct > FIBER_SATURATION_PCT) warnings.push('above-fiber-saturation');
  if (beyondCurvePct > 0) warnings.push('outside-curve');

  const standardUncertaintyPct = uncertaintyPct(input, woodTempC, estimated);
  return { mcPct, steps, standardUncertaintyPct, warnings };
}

/** What a reading is corrected for, °C: that of the wood, or what the air around it makes likely. */
function tempOf({ woodTempC, airTemp }: ReadingToCorrect): number | null {
  if (woodTempC === null) return airTemp ? withinLimit(airTemp.tempC) : null;
  return woodTempC >= WOOD_TEMP_LIMIT_C.min && woodTempC <= WOOD_TEMP_LIMIT_C.max ? woodTempC : null;
}

/** The MC of one reading by each of the published temperature corrections, %. Arguments and errors as `correctReading`. */
export const correctedByEach = (input: ReadingToCorrect): number[] =>
  publishedCorrections.map((published) => estimate(input, tempOf(input), published).mcPct);
