import { z } from 'zod';
import curveSeeds from '../../../seeds/resistance-curves.json' with { type: 'json' };
import { type ResistanceCurve, resistanceCurveSchema } from './resistance.ts';

/** The resistance curves by id. */
export const resistanceCurves: ReadonlyMap<string, ResistanceCurve> = new Map(
  Object.entries(z.record(z.string(), resistanceCurveSchema).parse(curveSeeds)),
);
