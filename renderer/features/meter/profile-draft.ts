import { z } from 'zod';
import { LEAST_PINS_MM } from '../../../shared-core/contract/meter.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { nameSchema } from '../../../shared-core/contract/yard.ts';
import {
  type MeterProfile,
  meterProfileSchema,
} from '../../../shared-core/probing/readings/meter-profile.ts';
import type { MeterScale } from '../../../shared-core/wood/moisture/corrected.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';

const answerSchema = z.enum(['yes', 'no', 'unknown']);
export type Answer = z.infer<typeof answerSchema>;

export const answerOf = (is: boolean | null | undefined): Answer =>
  is === null || is === undefined ? 'unknown' : is ? 'yes' : 'no';
const isSo = (answer: Answer): boolean | null => (answer === 'unknown' ? null : answer === 'yes');

/** Where a species scale is usually right: 70 °F, the zero of James's temperature correction (FPL-GTR-6, 1988, Figure 5). */
export const USUAL_SCALE_TEMP_C = (70 - 32) / 1.8;

/** Pins that meters have, mm: 5/16, 7/16, 1/2, 3/4, 1 and 1 1/2 in. Common practice, no source. */
export const USUAL_PINS_MM = [8, 11, 12.7, 19, 25.4, 38.1];

const fields = z.object({
  name: nameSchema,
  scale: z.enum(['usual', 'species', 'ohms', 'unknown']),
  /** Empty for none yet. */
  speciesId: z.string(),
  scaleTempC: z.number().min(-20).max(60),
  compensates: answerSchema,
  /** One of the usual lengths, as text; `other`, `unknown`. */
  pins: z.string(),
  pinsMm: z
    .number(says('meter-profile.pin-length-missing'))
    .min(LEAST_PINS_MM, says('validation.pins-short'))
    .max(200)
    .nullable(),
  insulated: answerSchema,
  /** Twice its standard uncertainty, as manuals have it, % MC. */
  accuracyPct: z
    .number(says('meter-profile.accuracy-wrong'))
    .min(0.4, says('meter-profile.accuracy-wrong'))
    .max(8, says('meter-profile.accuracy-wrong'))
    .nullable(),
});
export type ProfileDraft = z.infer<typeof fields>;

/** The answers about a meter, made into its profile. */
export const profileDraftSchema = (allSpecies: readonly Species[]) =>
  fields
    .refine(({ scale, speciesId }) => scale !== 'species' || speciesId !== '', {
      path: ['speciesId'],
      ...says('board.species-missing'),
    })
    .refine(({ pins, pinsMm }) => pins !== 'other' || pinsMm !== null, {
      path: ['pinsMm'],
      ...says('meter-profile.pin-length-missing'),
    })
    .transform((draft) => ({ name: draft.name, profile: profileOf(draft, allSpecies) }));

function profileOf(draft: ProfileDraft, allSpecies: readonly Species[]): MeterProfile {
  const { compensates, pins, pinsMm, insulated, accuracyPct } = draft;
  const lengthMm = pins === 'unknown' ? null : pins === 'other' ? pinsMm : Number(pins);
  const isInsulated = isSo(insulated);
  return meterProfileSchema.parse({
    scale: scaleOf(draft, allSpecies),
    compensatesTemp: isSo(compensates),
    pins: lengthMm === null && isInsulated === null ? null : { lengthMm, insulated: isInsulated },
    sdPct: accuracyPct === null ? null : accuracyPct / 2,
  });
}

function scaleOf({ scale, speciesId, scaleTempC }: ProfileDraft, allSpecies: readonly Species[]): MeterScale {
  if (scale !== 'species') return { kind: scale };
  const curveId = allSpecies.find(({ id }) => id === speciesId)?.curveId ?? null;
  return { kind: 'species', speciesId, curveId, tempC: scaleTempC };
}

/** The species that a meter is set to, which an earlier Pintally knew by its curve alone. */
export const speciesOfScale = (scale: MeterScale, allSpecies: readonly Species[]): Species | undefined =>
  scale.kind === 'species'
    ? allSpecies.find(({ id, curveId }) =>
        scale.speciesId === null ? curveId === scale.curveId : id === scale.speciesId,
      )
    : undefined;

/** What the form shows of a meter at first. */
export function profileDraft(
  { name, profile }: { name: string; profile: MeterProfile },
  allSpecies: readonly Species[],
): ProfileDraft {
  const { scale, compensatesTemp, pins, sdPct } = profile;
  const lengthMm = pins?.lengthMm ?? null;
  const isUsual = lengthMm !== null && USUAL_PINS_MM.includes(lengthMm);
  return {
    name,
    scale: scale.kind,
    speciesId: speciesOfScale(scale, allSpecies)?.id ?? '',
    scaleTempC: scale.kind === 'species' ? scale.tempC : USUAL_SCALE_TEMP_C,
    compensates: answerOf(compensatesTemp),
    pins: lengthMm === null ? 'unknown' : isUsual ? String(lengthMm) : 'other',
    pinsMm: lengthMm,
    insulated: answerOf(pins?.insulated),
    accuracyPct: sdPct === null ? null : 2 * sdPct,
  };
}
