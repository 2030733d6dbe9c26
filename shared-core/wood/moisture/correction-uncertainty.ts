import type { ReadingToCorrect } from './correction.ts';
import { type Estimate, estimate } from './correction-steps.ts';
import { FIBER_SATURATION_PCT } from './fiber-saturation.ts';
import { biasSdPct } from './meter-bias.ts';
import { basisOfScale, showsSpecies } from './scale.ts';
import { NEUTRAL_TEMP_C, withinLimit } from './temperature.ts';

/** Below this a pin meter tells little, % MC (Wood Handbook, chapter 13). */
export const LEAST_METER_PCT = 6;

/**
 * Standard uncertainty of a hand-held meter from board to board where its profile says nothing, % MC: figures from the
 * field are ±1 to ±3 points at two sigma, and this is their geometric middle. The Wood Handbook's 1 % (chapter 13) is for
 * the average over many boards.
 */
export const USUAL_METER_SD_PCT = 0.87;
/**
 * Near both ends of what pins can tell it is larger (Wood Handbook, chapter 13), for each point above `wetPct`, above fiber
 * saturation and below `LEAST_METER_PCT`; by how much is our judgment.
 */
export const NEAR_THE_ENDS = { wetPct: 20, wet: 0.1, free: 0.4, dry: 0.5 } as const;
function nearTheEndsPct(mcPct: number): number {
  const { wetPct, wet, free, dry } = NEAR_THE_ENDS;
  return (
    wet * Math.max(0, mcPct - wetPct) +
    free * Math.max(0, mcPct - FIBER_SATURATION_PCT) +
    dry * Math.max(0, LEAST_METER_PCT - mcPct)
  );
}
/** Spread between species where none is corrected for, as a share of MC: that of the published curves (tested). */
export const SPECIES_SPREAD = 0.07;
/** A % of an unknown scale may be that of the board's own species as well as the usual one: half that share. */
export const SCALE_UNKNOWN_SHARE = 0.5 * SPECIES_SPREAD;
/** Where it is unknown whether the meter corrects for temperature itself: this part of the shift may be too much. */
export const COMPENSATION_UNKNOWN_SHARE = 0.25;
/** Wood of unknown temperature may be anywhere in so many °C. Common practice, no source. */
export const UNKNOWN_TEMP_SPAN_K = 30;
/** One sigma of that. */
const UNKNOWN_TEMP_SIGMA_C = UNKNOWN_TEMP_SPAN_K / Math.sqrt(12);
/** Colder wood below 0 °C is less sure by so much for each degree, and by no more than the second. Our judgment, % MC. */
export const COLD_PER_K = 0.05;
export const MOST_COLD_PCT = 1;
/** Extended beyond a curve's end: this share of the % MC beyond. */
export const OUTSIDE_SHARE = 0.25;

/** What the temperature adds to the uncertainty, % MC. */
function temperatureUncertaintyPct(
  input: ReadingToCorrect,
  woodTempC: number | null,
  { mcPct, disagreementPct }: Estimate,
): number {
  if (input.unit === 'pct' && input.compensatesTemp === true) return disagreementPct;
  const without = estimate(input, null).mcPct;
  const spreadPct = (aboutC: number, sdK: number, middlePct: number): number => {
    const off = [-sdK, sdK].map((byK) => estimate(input, withinLimit(aboutC + byK)).mcPct - middlePct);
    return Math.hypot(...off) / Math.SQRT2;
  };
  const { airTemp = null } = input;
  if (woodTempC === null && airTemp === null) return spreadPct(NEUTRAL_TEMP_C, UNKNOWN_TEMP_SIGMA_C, without);
  const ofAirPct = woodTempC === null && airTemp !== null ? spreadPct(airTemp.tempC, airTemp.sdK, mcPct) : 0;
  const isOpen = input.unit === 'pct' && input.compensatesTemp !== false && !input.ownCalibration;
  return Math.hypot(ofAirPct, disagreementPct, isOpen ? COMPENSATION_UNKNOWN_SHARE * (mcPct - without) : 0);
}

/**
 * What nothing corrects for, as shares of the MC, one standard deviation: the species, and an unknown scale. A
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

/**
 * Standard uncertainty of a corrected reading, % MC: the root sum of squares of the meter from board to board, the species
 * spread where none is corrected for and an unknown scale (or what the user's own checks leave of these); how far the
 * published temperature corrections disagree, or for an unknown temperature the spread of 30 °C; the cold below 0 °C; the
 * extension beyond a curve.
 *
 * @param woodTempC  null: not known, or too far out to be corrected for
 * @param estimated  at that temperature, or at that of the air
 */
export function uncertaintyPct(
  input: ReadingToCorrect,
  woodTempC: number | null,
  estimated: Estimate,
): number {
  return Math.hypot(
    meterUncertaintyPct(input, estimated.mcPct),
    temperatureUncertaintyPct(input, woodTempC, estimated),
    Math.min(MOST_COLD_PCT, COLD_PER_K * Math.max(0, -(woodTempC ?? input.airTemp?.tempC ?? 0))),
    OUTSIDE_SHARE * estimated.beyondCurvePct,
  );
}
