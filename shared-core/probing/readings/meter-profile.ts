import { z } from 'zod';
import { type MeterScale, meterScaleSchema, type ReadingUnit } from '../../wood/moisture/corrected.ts';
import { pinsSchema } from './pins.ts';

/** What the values of a meter mean and what its pins reach, whether they come by radio or are typed. */
export const meterProfileSchema = z.object({
  scale: meterScaleSchema,
  /** It corrects what it shows for the wood's temperature itself; null where unknown. */
  compensatesTemp: z.boolean().nullable(),
  /** Null where unknown. */
  pins: pinsSchema.nullable(),
  /** Standard uncertainty of one value, % MC; null: as usual. The least is of a laboratory's, the most of a toy's. */
  sdPct: z.number().min(0.2).max(4).nullable(),
});
export type MeterProfile = z.infer<typeof meterProfileSchema>;

/** Of a meter of which nothing is known. */
export const unknownProfile: MeterProfile = {
  scale: { kind: 'unknown' },
  compensatesTemp: null,
  pins: null,
  sdPct: null,
};

/**
 * What a profile from elsewhere says here: a species that this yard does not have is unknown, and what its curve says stays.
 *
 * @param hasSpecies  whether the yard has a species of that id
 */
export function knownHere(profile: MeterProfile, hasSpecies: (id: string) => boolean): MeterProfile {
  const { scale } = profile;
  if (scale.kind !== 'species' || scale.speciesId === null || hasSpecies(scale.speciesId)) return profile;
  return { ...profile, scale: scale.curveId === null ? unknownProfile.scale : { ...scale, speciesId: null } };
}

/** The unit in which values of a meter are typed that sends none; of one whose profile was not asked for, %. */
export const typedUnit = (profile: MeterProfile | null): ReadingUnit =>
  profile?.scale.kind === 'ohms' ? 'ohm' : 'pct';

/** What the values of a meter mean, in its unit; null for a profile that was not asked for. */
export const scaleOf = (unit: ReadingUnit, profile: MeterProfile | null): MeterScale =>
  unit === 'ohm' ? { kind: 'ohms' } : (profile?.scale ?? unknownProfile.scale);
