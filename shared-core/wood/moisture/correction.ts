import type { Species } from '../species/species.ts';
import type { Corrected, CorrectionStep, CorrectionWarning, MeterBasis, ReadingUnit } from './corrected.ts';
import { FIBER_SATURATION_PCT } from './fiber-saturation.ts';
import { mostWaterPct } from './most-water.ts';
import { curveRangePct, log10OhmsAt, mcAtLog10Ohms, type ResistanceCurve } from './resistance.ts';
import { resistanceCurves } from './resistance-curves.ts';
import {
  log10OhmsShift,
  NEUTRAL_TEMP_C,
  shownAtBasisTempPct,
  WOOD_TEMP_LIMIT_C,
  WOOD_TEMP_RANGE_C,
} from './temperature.ts';

/** The user's own oven-dry checks as a line: reading on the basis scale = a MC + b (see `calibration.ts`). */
export interface OwnCalibration {
  a: number;
  b: number;
  /** Standard error of an MC found through the line, % MC. */
  standardErrorPct: number;
}

export interface ReadingToCorrect {
  value: number;
  /** `pct` as shown on the meter's scale, `ohm` as resistance between the pins. */
  unit: ReadingUnit;
  /** null: not known. */
  woodTempC: number | null;
  species: Species;
  /** What a % scale was made for; null: not known, `UNKNOWN_BASIS` is taken. */
  basis: MeterBasis | null;
  ownCalibration?: OwnCalibration | null;
}

/**
 * The basis taken where a meter does not say: Douglas-fir, on which meters are generally calibrated (W. L. James,
 * FPL-GTR-6, 1988, from memory), at the temperature where the published formula leaves a reading as it is.
 */
export const UNKNOWN_BASIS: MeterBasis = { curveId: 'douglas-fir-coast', tempC: NEUTRAL_TEMP_C };

/** Below this a pin meter tells little, % MC (Wood Handbook, chapter 13). */
export const LEAST_METER_PCT = 6;

/** Where no specific gravity is known: no species that is sawn holds more water, % MC. */
const MOST_WATER_OF_ANY_PCT = 400;
/** Between these a resistance can come from wood: below, the pins touch metal or each other, Ω. */
const WOOD_OHMS = { min: 100, max: 1e15 } as const;

/**
 * Standard uncertainties, % MC. The Wood Handbook (chapter 13) says that corrected readings average within 1 % MC
 * of the truth between 6 and 30 %, less precisely near the ends; read as two sigma, that is 0.5. The growth toward
 * the ends is our judgment.
 */
function boardToBoardPct(mcPct: number): number {
  const wet = 0.1 * Math.max(0, mcPct - 20) + 0.4 * Math.max(0, mcPct - FIBER_SATURATION_PCT);
  return 0.5 + wet + 0.5 * Math.max(0, LEAST_METER_PCT - mcPct);
}
/** Spread between species where none is corrected for, as a share of MC: that of the published curves (tested). */
const SPECIES_SPREAD = 0.07;
/** A meter whose basis is not known. */
const BASIS_UNKNOWN_PCT = 0.4;
/** Of the temperature's shift: the two published routes differ by less (tested); the rest is our judgment. */
const TEMPERATURE_SHARE = 0.15;
/** Wood of unknown temperature may be anywhere in 30 °C: one sigma of that. */
const UNKNOWN_TEMP_SIGMA_C = 30 / Math.sqrt(12);
/** Extended beyond a curve's end: this share of the % MC beyond. */
const OUTSIDE_SHARE = 0.25;

interface Estimate {
  mcPct: number;
  applied: CorrectionStep[];
  /** How far it lies beyond the ends of the curves used, % MC; 0 within. */
  beyondCurvePct: number;
}

function curveOf(curveId: string): ResistanceCurve {
  const curve = resistanceCurves.get(curveId);
  if (!curve) throw new RangeError(`This resistance curve is not known: "${curveId}".`);
  return curve;
}

/** MC on one curve of wood at a temperature. */
function mcOnCurve(curve: ResistanceCurve, log10Ohms: number, woodTempC: number): number {
  return mcAtLog10Ohms(curve, log10Ohms, (mcPct) => log10OhmsShift(mcPct, woodTempC, curve.tempC)).mcPct;
}

/** Beyond by less than this is rounding, % MC. */
const ROUNDING_PCT = 1e-6;

function beyond(curve: ResistanceCurve, mcPct: number): number {
  const { minPct, maxPct } = curveRangePct(curve);
  const by = Math.max(minPct - mcPct, mcPct - maxPct);
  return by > ROUNDING_PCT ? by : 0;
}

/** The reading turned into MC as if the wood were at `woodTempC`; null: as if at the scale's own temperature. */
function estimate(input: ReadingToCorrect, basis: MeterBasis, woodTempC: number | null): Estimate {
  const { species, ownCalibration } = input;
  const basisCurve = curveOf(basis.curveId);
  const speciesCurve = !ownCalibration && species.curveId !== null ? curveOf(species.curveId) : null;
  const applied: CorrectionStep[] = woodTempC === null ? [] : ['temperature'];
  let mcPct: number;
  let beyondCurvePct = 0;

  if (input.unit === 'ohm') {
    const log10Ohms = Math.log10(input.value);
    const curve = speciesCurve ?? basisCurve;
    mcPct = mcOnCurve(curve, log10Ohms, woodTempC ?? curve.tempC);
    beyondCurvePct = beyond(curve, mcPct);
    applied.push(speciesCurve ? 'species-curve' : 'basis-curve');
  } else {
    mcPct = woodTempC === null ? input.value : shownAtBasisTempPct(input.value, woodTempC, basis.tempC);
    if (speciesCurve) {
      // The scale is right at the basis temperature: there both species show this resistance.
      const log10Ohms =
        log10OhmsAt(basisCurve, mcPct).log10Ohms + log10OhmsShift(mcPct, basis.tempC, basisCurve.tempC);
      beyondCurvePct = beyond(basisCurve, mcPct);
      mcPct = mcOnCurve(speciesCurve, log10Ohms, basis.tempC);
      beyondCurvePct = Math.max(beyondCurvePct, beyond(speciesCurve, mcPct));
      applied.push('basis-curve', 'species-curve');
    }
  }

  if (ownCalibration) {
    mcPct = (mcPct - ownCalibration.b) / ownCalibration.a;
    applied.push('own-calibration');
  } else if (!speciesCurve && species.linear) {
    mcPct = (mcPct - species.linear.b) / species.linear.a;
    applied.push('species-linear');
  }
  return { mcPct, applied, beyondCurvePct };
}

const REFUSED: Corrected = {
  mcPct: null,
  applied: [],
  standardUncertaintyPct: null,
  warnings: ['not-a-reading'],
};

/**
 * Turns one reading into moisture content.
 *
 * The method follows from what is known, best first:
 * 1. the person's own oven-dry checks of this species with this meter, on the temperature-corrected basis scale;
 * 2. ohms: temperature by the resistance route, then the species' curve;
 * 3. %: temperature by the published formula, back to resistance on the basis curve, then the species' curve;
 * 4. no curve: temperature, then the species' linear coefficients a and b: MC = (M - b) / a (ohms are first read
 *    on the basis curve);
 * 5. nothing known of the species: temperature only, with a warning.
 *
 * Nothing is clamped: a value outside a range is given with a warning. Only what cannot be a moisture content (not
 * a number, negative, more than this species can hold, a resistance that wood cannot have) is refused, with null.
 * Frozen wood is computed and marked.
 *
 * `standardUncertaintyPct` is the root sum of squares of: board to board (or the user's own standard error);
 * species spread where none is corrected for; unknown basis; a share of the temperature's shift, or for an unknown
 * temperature the spread of 30 °C; the extension beyond a curve.
 *
 * @throws RangeError if the basis or the species names a curve that does not exist
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

  const basis = input.basis ?? UNKNOWN_BASIS;
  const warnings: CorrectionWarning[] = [];
  let woodTempC = input.woodTempC;
  if (woodTempC === null || !Number.isFinite(woodTempC)) {
    woodTempC = null;
    warnings.push('temperature-unknown');
  } else {
    if (woodTempC <= 0) warnings.push('frozen');
    if (woodTempC < WOOD_TEMP_RANGE_C.min || woodTempC > WOOD_TEMP_RANGE_C.max) {
      warnings.push('temperature-out-of-range');
      // So far out that the formula is refused: left as it is, and as unsure as if it were not known.
      if (woodTempC < WOOD_TEMP_LIMIT_C.min || woodTempC > WOOD_TEMP_LIMIT_C.max) woodTempC = null;
    }
  }

  const { mcPct, applied, beyondCurvePct } = estimate(input, basis, woodTempC);
  if (!(mcPct >= 0 && mcPct <= mostPct)) return REFUSED;

  const uncorrected = !input.ownCalibration && species.curveId === null && species.linear === null;
  if (uncorrected) warnings.push('no-species-correction');
  if (mcPct < LEAST_METER_PCT) warnings.push('below-meter-range');
  if (mcPct > FIBER_SATURATION_PCT) warnings.push('above-fiber-saturation');
  if (beyondCurvePct > 0) warnings.push('outside-curve');

  const without = estimate(input, basis, null).mcPct;
  const temperaturePct =
    woodTempC === null
      ? Math.abs(estimate(input, basis, NEUTRAL_TEMP_C + UNKNOWN_TEMP_SIGMA_C).mcPct - without)
      : TEMPERATURE_SHARE * Math.abs(mcPct - without);
  // Basis matters for a shown %, not for ohms on the species' own curve, nor where the user checked this meter.
  const basisUnknown = unit === 'pct' && input.basis === null && !input.ownCalibration;
  const parts = [
    input.ownCalibration?.standardErrorPct ?? boardToBoardPct(mcPct),
    uncorrected ? SPECIES_SPREAD * mcPct : 0,
    basisUnknown ? BASIS_UNKNOWN_PCT : 0,
    temperaturePct,
    OUTSIDE_SHARE * beyondCurvePct,
  ];
  return { mcPct, applied, standardUncertaintyPct: Math.hypot(...parts), warnings };
}
