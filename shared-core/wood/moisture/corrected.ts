import { z } from 'zod';

/** What a meter sends: moisture content as shown on its scale, or the electrical resistance between its pins. */
export const readingUnitSchema = z.enum(['pct', 'ohm']);
export type ReadingUnit = z.infer<typeof readingUnitSchema>;

/** The species and temperature that a % scale was made for, by its resistance curve. `curveId` is a key of the curves. */
export const meterBasisSchema = z.object({
  curveId: z.string().max(60),
  tempC: z.number().min(-20).max(60),
});
export type MeterBasis = z.infer<typeof meterBasisSchema>;

/** What the values that a meter shows mean. Values in ohms mean resistance, whatever the scale says. */
export const meterScaleSchema = z.discriminatedUnion('kind', [
  /**
   * % of a species that the meter is set to, right at `tempC`. `speciesId` is null where only a curve is known, `curveId`
   * where no curve is published for that species. A board of that species needs no species correction.
   */
  z.object({
    kind: z.literal('species'),
    speciesId: z.string().max(60).nullable(),
    curveId: z.string().max(60).nullable(),
    tempC: z.number().min(-20).max(60),
  }),
  /** % of the usual default: Douglas-fir at about 21 °C. */
  z.object({ kind: z.literal('usual') }),
  z.object({ kind: z.literal('ohms') }),
  /** % of who knows what: read as the usual one, and less sure. */
  z.object({ kind: z.literal('unknown') }),
]);
export type MeterScale = z.infer<typeof meterScaleSchema>;

/** One step that turned the raw value into MC, in the order it was applied. */
export const correctionStepSchema = z.enum([
  /** What a check of the meter found it to be off by was taken off. */
  'meter-check',
  /** Ohms of a species without a curve were turned into % on the meter's own curve, or the usual one. */
  'scale-curve',
  /** A % of the species that the meter is set to was turned into what the usual scale would show. */
  'usual-scale',
  /** Brought to the temperature that the scale or the curve was made for. */
  'temperature',
  /** The species' curve: from ohms, or from the resistance behind a % of another species. */
  'species-curve',
  /** The linear species coefficients were applied. */
  'species-linear',
  /** The line through the user's own oven-dry checks was applied. */
  'own-calibration',
  /** What boards of known moisture content taught of the meter and the species was applied. */
  'own-checks',
]);
export type CorrectionStep = z.infer<typeof correctionStepSchema>;

export const correctionWarningSchema = z.enum([
  /** Nothing published or fitted for the species: temperature only. */
  'no-species-correction',
  /** Wood temperature not known: not corrected for temperature. */
  'temperature-unknown',
  /** Wood temperature not known: corrected for that of the air around it. */
  'temperature-of-air',
  /** Wood temperature outside the published range of the formula. */
  'temperature-out-of-range',
  /** Free water in it is frozen, and ice hardly conducts: no pin reading is valid. */
  'frozen',
  /** Wood at or below 0 °C with bound water only, which does not freeze: less exact. */
  'below-freezing',
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
  /** What was done to the raw value, in order, each with the value after it, %. */
  steps: z.array(z.object({ step: correctionStepSchema, pct: z.number() })),
  /** Standard uncertainty (one sigma) of `mcPct`, in % MC; null where `mcPct` is. */
  standardUncertaintyPct: z.number().nullable(),
  warnings: z.array(correctionWarningSchema),
});
export type Corrected = z.infer<typeof correctedSchema>;
