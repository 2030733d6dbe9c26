import { z } from 'zod';

/** What a meter sends: moisture content as shown on its scale, or the electrical resistance between its pins. */
export const readingUnitSchema = z.enum(['pct', 'ohm']);
export type ReadingUnit = z.infer<typeof readingUnitSchema>;

/** The species and temperature that a meter's % scale was made for. `curveId` is a key of the resistance curves. */
export const meterBasisSchema = z.object({
  curveId: z.string().max(60),
  tempC: z.number().min(-20).max(60),
});
export type MeterBasis = z.infer<typeof meterBasisSchema>;

/** One step that turned the raw value into MC, in the order it was applied. */
export const correctionStepSchema = z.enum([
  /** The meter's own % scale was turned back into resistance on its basis curve; or, for a species without a curve, ohms into %. */
  'basis-curve',
  /** Resistance was brought to the curve's temperature. */
  'temperature',
  /** Resistance was turned into MC on the species' curve. */
  'species-curve',
  /** The linear species coefficients were applied. */
  'species-linear',
  /** The user's own oven-dry checks were applied. */
  'own-calibration',
]);
export type CorrectionStep = z.infer<typeof correctionStepSchema>;

export const correctionWarningSchema = z.enum([
  /** Nothing published or fitted for the species: temperature only. */
  'no-species-correction',
  /** Wood temperature not known: not corrected for temperature. */
  'temperature-unknown',
  /** Wood temperature outside the published range of the formula. */
  'temperature-out-of-range',
  /** Wood at or below 0 °C: no pin reading is valid. */
  'frozen',
  /** Below about 6 %: less than a pin meter can tell. */
  'below-meter-range',
  /** Above fiber saturation: qualitative only. */
  'above-fiber-saturation',
  /** Outside the ends of the resistance curve: extended along its end slope. */
  'outside-curve',
  /** Not a number, negative, or beyond what wood can hold: refused. */
  'not-a-reading',
]);
export type CorrectionWarning = z.infer<typeof correctionWarningSchema>;

/** A reading turned into moisture content, with what was done to it and how sure it is. */
export const correctedSchema = z.object({
  /** Moisture content, % of oven-dry mass; null where it was refused. Never clamped. */
  mcPct: z.number().nullable(),
  applied: z.array(correctionStepSchema),
  /** Standard uncertainty (one sigma) of `mcPct`, in % MC; null where `mcPct` is. */
  standardUncertaintyPct: z.number().nullable(),
  warnings: z.array(correctionWarningSchema),
});
export type Corrected = z.infer<typeof correctedSchema>;
