import type { Species } from '../species/species.ts';
import type { Corrected, CorrectionStep, CorrectionWarning, MeterScale, ReadingUnit } from './corrected.ts';
import { FIBER_SATURATION_PCT, FROZEN_FROM_PCT } from './fiber-saturation.ts';
import { biasSdPct, type LearnedBias } from './meter-bias.ts';
import { mostWaterPct } from './most-water.ts';
import { curveRangePct, log10OhmsAt, mcAtLog10Ohms, type ResistanceCurve } from './resistance.ts';
import { resistanceCurves } from './resistance-curves.ts';
import { basisOfScale, showsSpecies, USUAL_SCALE } from './scale.ts';
import {
  atWoodTempPct,
  disagreementPct,
  james,
  NEUTRAL_TEMP_C,
  pfaffGarrahan,
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
  /** What a shown % means. */
  scale: MeterScale;
  /** The meter measures the wood's temperature, or asks for it, and shows a % corrected for it; null: not known. */
  compensatesTemp?: boolean | null;
  /** Standard uncertainty of the meter from one board to the next, % MC; null: the usual one. */
  meterSdPct?: number | null;
  ownCalibration?: OwnCalibration | null;
  /** What the yard's own boards taught; not used beside `ownCalibration`, which is of the same checks. */
  learned?: LearnedBias | null;
}

/** Below this a pin meter tells little, % MC (Wood Handbook, chapter 13). */
export const LEAST_METER_PCT = 6;

/** Where no specific gravity is known: no species that is sawn holds more water, % MC. */
const MOST_WATER_OF_ANY_PCT = 400;
/** Between these a resistance can come from wood: below, the pins touch metal or each other, Ω. */
const WOOD_OHMS = { min: 100, max: 1e15 } as const;

/**
 * Standard uncertainty of a hand-held meter from board to board where its profile says nothing, % MC: figures from the
 * field are ±1 to ±3 points at two sigma, and this is their geometric middle. The Wood Handbook's 1 % (chapter 13) is for
 * the average over many boards.
 */
export const USUAL_METER_SD_PCT = 0.87;
/** Near both ends of what pins can tell it is larger (Wood Handbook, chapter 13); by how much is our judgment. */
function nearTheEndsPct(mcPct: number): number {
  const wet = 0.1 * Math.max(0, mcPct - 20) + 0.4 * Math.max(0, mcPct - FIBER_SATURATION_PCT);
  return wet + 0.5 * Math.max(0, LEAST_METER_PCT - mcPct);
}
/** Spread between species where none is corrected for, as a share of MC: that of the published curves (tested). */
const SPECIES_SPREAD = 0.07;
/** A % of an unknown scale may be that of the board's own species as well as the usual one: half that share. */
const SCALE_UNKNOWN_SHARE = 0.5 * SPECIES_SPREAD;
/** Where nobody knows whether the meter corrects for temperature itself: this part of the shift may be too much. */
const COMPENSATION_UNKNOWN_SHARE = 0.25;
/** Wood of unknown temperature may be anywhere in 30 °C: one sigma of that. */
const UNKNOWN_TEMP_SIGMA_C = 30 / Math.sqrt(12);
/** Colder wood below 0 °C is less sure by so much for each degree, and by no more than the second. Our judgment, % MC. */
const COLD_PER_K = 0.05;
const MOST_COLD_PCT = 1;
/** Extended beyond a curve's end: this share of the % MC beyond. */
const OUTSIDE_SHARE = 0.25;

interface Estimate {
  mcPct: number;
  steps: Corrected['steps'];
  /** How far it lies beyond the ends of the curves used, % MC; 0 within. */
  beyondCurvePct: number;
  /** How far the published temperature corrections disagree about it, % MC. */
  disagreementPct: number;
}

function curveOf(curveId: string): ResistanceCurve {
  const curve = resistanceCurves.get(curveId);
  if (!curve) throw new RangeError(`This resistance curve is not known: "${curveId}".`);
  return curve;
}

const curveOrNull = (curveId: string | null): ResistanceCurve | null =>
  curveId === null ? null : curveOf(curveId);

/** Beyond by less than this is rounding, % MC. */
const ROUNDING_PCT = 1e-6;

function beyond(curve: ResistanceCurve, mcPct: number): number {
  const { minPct, maxPct } = curveRangePct(curve);
  const by = Math.max(minPct - mcPct, mcPct - maxPct);
  return by > ROUNDING_PCT ? by : 0;
}

/** What a % of one species, right at a temperature, is as a % of another: both have the same resistance there. */
function onOtherCurve(mcPct: number, from: ResistanceCurve, to: ResistanceCurve, tempC: number) {
  const fromPct = atWoodTempPct(james, mcPct, from.tempC, tempC);
  const toPct = mcAtLog10Ohms(to, log10OhmsAt(from, fromPct).log10Ohms).mcPct;
  return {
    mcPct: atWoodTempPct(james, toPct, tempC, to.tempC),
    beyondCurvePct: Math.max(beyond(from, fromPct), beyond(to, toPct)),
  };
}

const NO_STEP: Omit<Estimate, 'mcPct'> = { steps: [], beyondCurvePct: 0, disagreementPct: 0 };

const withStep = (before: Estimate, step: CorrectionStep, mcPct: number): Estimate => ({
  ...before,
  mcPct,
  steps: [...before.steps, { step, pct: mcPct }],
});

/** Brought from the temperature of its scale to that of the wood; null: not corrected for it. */
function atTemperature(
  before: Estimate,
  published: typeof james,
  woodTempC: number | null,
  scaleTempC: number,
): Estimate {
  if (woodTempC === null) return before;
  const { mcPct } = before;
  const after = withStep(before, 'temperature', atWoodTempPct(published, mcPct, woodTempC, scaleTempC));
  return { ...after, disagreementPct: disagreementPct(published, mcPct, woodTempC, scaleTempC) };
}

/** Ohms on the species' curve; without one on the meter's or the usual one. */
function ofOhms(input: ReadingToCorrect, woodTempC: number | null): Estimate {
  const speciesCurve = input.ownCalibration ? null : curveOrNull(input.species.curveId);
  const curve =
    speciesCurve ?? curveOrNull(basisOfScale(input.scale).curveId) ?? curveOf(USUAL_SCALE.curveId);
  const { mcPct } = mcAtLog10Ohms(curve, Math.log10(input.value));
  const onCurve = withStep({ mcPct, ...NO_STEP }, speciesCurve ? 'species-curve' : 'scale-curve', mcPct);
  return atTemperature({ ...onCurve, beyondCurvePct: beyond(curve, mcPct) }, james, woodTempC, curve.tempC);
}

/** A shown % as a % of the species where it has a curve; else as one of the scale that its coefficients are made for. */
function ofShown(input: ReadingToCorrect, woodTempC: number | null): Estimate {
  const { species, ownCalibration, scale, compensatesTemp } = input;
  const { curveId, tempC } = basisOfScale(scale);
  const shown: Estimate = { mcPct: input.value, ...NO_STEP };
  const corrected = atTemperature(shown, pfaffGarrahan, woodTempC, tempC);
  // A meter that corrects for temperature itself has done the same, by one correction or another.
  const atTemp =
    compensatesTemp === true ? { ...shown, disagreementPct: corrected.disagreementPct } : corrected;
  if (ownCalibration) return atTemp;

  const scaleCurve = curveOrNull(curveId);
  const speciesCurve = curveOrNull(species.curveId);
  if (showsSpecies(scale, species))
    return { ...atTemp, beyondCurvePct: speciesCurve ? beyond(speciesCurve, atTemp.mcPct) : 0 };
  const usualCurve = curveOf(USUAL_SCALE.curveId);
  // Of a species without a curve nothing is known but that meters are usually made for another.
  const from = scaleCurve ?? usualCurve;
  const to = speciesCurve ?? (species.linear ? usualCurve : from);
  if (from === to) return atTemp;
  const { mcPct, beyondCurvePct } = onOtherCurve(atTemp.mcPct, from, to, tempC);
  return {
    ...withStep(atTemp, speciesCurve ? 'species-curve' : 'usual-scale', mcPct),
    beyondCurvePct,
  };
}

/** The reading turned into MC as if the wood were at `woodTempC`; null: as if at the scale's own temperature. */
function estimate(input: ReadingToCorrect, woodTempC: number | null): Estimate {
  const { unit, species, ownCalibration, learned } = input;
  const read = unit === 'ohm' ? ofOhms(input, woodTempC) : ofShown(input, woodTempC);
  if (ownCalibration)
    return withStep(read, 'own-calibration', (read.mcPct - ownCalibration.b) / ownCalibration.a);
  const { linear } = species;
  const isOnSpecies = species.curveId !== null || (unit === 'pct' && showsSpecies(input.scale, species));
  const ofSpecies =
    isOnSpecies || !linear ? read : withStep(read, 'species-linear', (read.mcPct - linear.b) / linear.a);
  return learned ? withStep(ofSpecies, 'own-checks', (ofSpecies.mcPct - learned.b) / learned.a) : ofSpecies;
}

/** What the temperature adds to the uncertainty, % MC. */
function temperatureUncertaintyPct(
  input: ReadingToCorrect,
  woodTempC: number | null,
  { mcPct, disagreementPct }: Estimate,
): number {
  if (input.unit === 'pct' && input.compensatesTemp === true) return disagreementPct;
  const without = estimate(input, null).mcPct;
  if (woodTempC === null) {
    const off = [-UNKNOWN_TEMP_SIGMA_C, UNKNOWN_TEMP_SIGMA_C].map(
      (byK) => estimate(input, NEUTRAL_TEMP_C + byK).mcPct - without,
    );
    return Math.hypot(...off) / Math.SQRT2;
  }
  const isOpen = input.unit === 'pct' && input.compensatesTemp !== false && !input.ownCalibration;
  return Math.hypot(disagreementPct, isOpen ? COMPENSATION_UNKNOWN_SHARE * (mcPct - without) : 0);
}

/**
 * What nothing corrects for, as shares of the MC, one standard deviation: the species, and a scale that nobody knows. A
 * scale matters for a shown %, not for ohms.
 */
export function openShares({ unit, scale, species }: Pick<ReadingToCorrect, 'unit' | 'scale' | 'species'>): {
  speciesShare: number;
  scaleShare: number;
} {
  const isOnSpecies = unit === 'pct' && showsSpecies(scale, species);
  const isCorrected = isOnSpecies || species.curveId !== null || species.linear !== null;
  const isScaleKnown =
    unit === 'ohm' || isOnSpecies || (scale.kind !== 'unknown' && basisOfScale(scale).curveId !== null);
  return {
    speciesShare: isCorrected ? 0 : SPECIES_SPREAD,
    scaleShare: isScaleKnown ? 0 : SCALE_UNKNOWN_SHARE,
  };
}

/** What the meter and the species add to the uncertainty, % MC: by the user's own checks where there are any. */
function meterUncertaintyPct(input: ReadingToCorrect, mcPct: number): number {
  const { ownCalibration, learned, meterSdPct } = input;
  if (ownCalibration) return ownCalibration.standardErrorPct;
  const endsPct = nearTheEndsPct(mcPct);
  if (learned) return Math.hypot(biasSdPct(learned, mcPct), learned.boardSdPct + endsPct);
  const { speciesShare, scaleShare } = openShares(input);
  return Math.hypot((meterSdPct ?? USUAL_METER_SD_PCT) + endsPct, speciesShare * mcPct, scaleShare * mcPct);
}

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
 * After 2 to 6, what boards of known moisture content taught of the meter and the species (`meter-bias.ts`).
 *
 * Nothing is clamped: a value outside a range is given with a warning. Only what cannot be a moisture content (not
 * a number, negative, more than this species can hold, a resistance that wood cannot have) is refused, with null.
 * Frozen wood is computed and marked: below 0 °C the value is less exact, and above 22 % no value is valid.
 *
 * `standardUncertaintyPct` is the root sum of squares of: the meter from board to board, the species
 * spread where none is corrected for and an unknown scale (or what the user's own checks leave of these); how far the published temperature corrections disagree,
 * or for an unknown temperature the spread of 30 °C; the cold below 0 °C; the extension beyond a curve.
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
    if (!isCompensated) warnings.push('temperature-unknown');
  } else {
    if (woodTempC < WOOD_TEMP_RANGE_C.min || woodTempC > WOOD_TEMP_RANGE_C.max) {
      warnings.push('temperature-out-of-range');
      // So far out that the formula is refused: left as it is, and as unsure as if it were not known.
      if (woodTempC < WOOD_TEMP_LIMIT_C.min || woodTempC > WOOD_TEMP_LIMIT_C.max) woodTempC = null;
    }
  }

  const estimated = estimate(input, woodTempC);
  const { mcPct, steps, beyondCurvePct } = estimated;
  if (!(mcPct >= 0 && mcPct <= mostPct)) return REFUSED;

  const open = openShares(input);
  if (!input.ownCalibration && open.speciesShare > 0) warnings.push('no-species-correction');
  if (woodTempC !== null && woodTempC <= 0)
    warnings.push(mcPct > FROZEN_FROM_PCT ? 'frozen' : 'below-freezing');
  if (mcPct < LEAST_METER_PCT) warnings.push('below-meter-range');
  if (mcPct > FIBER_SATURATION_PCT) warnings.push('above-fiber-saturation');
  if (beyondCurvePct > 0) warnings.push('outside-curve');

  const temperaturePct = temperatureUncertaintyPct(input, woodTempC, estimated);
  const parts = [
    meterUncertaintyPct(input, mcPct),
    temperaturePct,
    Math.min(MOST_COLD_PCT, COLD_PER_K * Math.max(0, -(woodTempC ?? 0))),
    OUTSIDE_SHARE * beyondCurvePct,
  ];
  return { mcPct, steps, standardUncertaintyPct: Math.hypot(...parts), warnings };
}
