import type { Corrected, CorrectionStep } from './corrected.ts';
import type { ReadingToCorrect } from './correction.ts';
import { curveRangePct, log10OhmsAt, mcAtLog10Ohms, type ResistanceCurve } from './resistance.ts';
import { resistanceCurves } from './resistance-curves.ts';
import { basisOfScale, showsSpecies, USUAL_SCALE } from './scale.ts';
import { atWoodTempPct, disagreementPct, james, type Published, pfaffGarrahan } from './temperature.ts';

/** A reading turned into MC, before its uncertainty. */
export interface Estimate {
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
  published: Published,
  woodTempC: number | null,
  scaleTempC: number,
): Estimate {
  if (woodTempC === null) return before;
  const { mcPct } = before;
  const after = withStep(before, 'temperature', atWoodTempPct(published, mcPct, woodTempC, scaleTempC));
  return { ...after, disagreementPct: disagreementPct(published, mcPct, woodTempC, scaleTempC) };
}

/** Ohms on the species' curve; without one on the meter's or the usual one. */
function ofOhms(input: ReadingToCorrect, woodTempC: number | null, published: Published = james): Estimate {
  const speciesCurve = input.ownCalibration ? null : curveOrNull(input.species.curveId);
  const curve =
    speciesCurve ?? curveOrNull(basisOfScale(input.scale).curveId) ?? curveOf(USUAL_SCALE.curveId);
  const { mcPct } = mcAtLog10Ohms(curve, Math.log10(input.value));
  const asShown = withStep({ mcPct, ...NO_STEP }, speciesCurve ? 'species-curve' : 'scale-curve', mcPct);
  const onCurve = input.meterOff
    ? withStep(asShown, 'meter-check', mcAtLog10Ohms(curve, Math.log10(input.value) - input.meterOff).mcPct)
    : asShown;
  return atTemperature(
    { ...onCurve, beyondCurvePct: beyond(curve, onCurve.mcPct) },
    published,
    woodTempC,
    curve.tempC,
  );
}

/** A shown % as a % of the species where it has a curve; else as one of the scale that its coefficients are made for. */
function ofShown(
  input: ReadingToCorrect,
  woodTempC: number | null,
  published: Published = pfaffGarrahan,
): Estimate {
  const { species, ownCalibration, scale, compensatesTemp } = input;
  const { curveId, tempC } = basisOfScale(scale);
  const raw: Estimate = { mcPct: input.value, ...NO_STEP };
  const shown = input.meterOff ? withStep(raw, 'meter-check', input.value - input.meterOff) : raw;
  const corrected = atTemperature(shown, published, woodTempC, tempC);
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

/**
 * The reading turned into MC as if the wood were at `woodTempC`; null: as if at the scale's own temperature.
 *
 * @param published  the temperature correction; left out: the one that is used for such a value
 */
export function estimate(input: ReadingToCorrect, woodTempC: number | null, published?: Published): Estimate {
  const { unit, species, ownCalibration, learned } = input;
  const read = unit === 'ohm' ? ofOhms(input, woodTempC, published) : ofShown(input, woodTempC, published);
  if (ownCalibration)
    return withStep(read, 'own-calibration', (read.mcPct - ownCalibration.b) / ownCalibration.a);
  const { linear } = species;
  const isOnSpecies = species.curveId !== null || (unit === 'pct' && showsSpecies(input.scale, species));
  const ofSpecies =
    isOnSpecies || !linear ? read : withStep(read, 'species-linear', (read.mcPct - linear.b) / linear.a);
  return learned ? withStep(ofSpecies, 'own-checks', (ofSpecies.mcPct - learned.b) / learned.a) : ofSpecies;
}
