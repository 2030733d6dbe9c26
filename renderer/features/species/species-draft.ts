import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import { deriveSpecies } from '../../../shared-core/wood/species/derive-species.ts';
import { onlyNamed, type Species, speciesSchema } from '../../../shared-core/wood/species/species.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { sourceShown } from './source-shown.ts';

const { shape } = speciesSchema;
const change = shape.changeCoefficient.unwrap().shape;
const linear = shape.linear.unwrap().shape;

/** Both of a pair are known or neither is. */
function checkPair<T extends object>(
  draft: T,
  keys: readonly (keyof T & string)[],
  context: z.RefinementCtx<T>,
) {
  const missing = keys.filter((key) => draft[key] === null);
  if (missing.length === 1) {
    context.addIssue({ code: 'custom', path: missing, message: 'species.half-a-pair' satisfies Code });
  }
}

/** A species as typed: pairs of figures apart, other names in a row, and nothing is blank but for what is not known. */
export const speciesDraftSchema = z
  .object({
    name: z.string().trim().min(1, says('species.name-missing')).max(80),
    botanicalName: z.string().trim().max(120),
    group: z.string().trim().min(1, says('species.group-missing')).max(60),
    /** Separated by commas. */
    aliases: z.string(),
    basicSpecificGravity: shape.basicSpecificGravity,
    radialPct: shape.radialPct,
    tangentialPct: shape.tangentialPct,
    volumetricPct: shape.volumetricPct,
    changeRadial: change.radial.nullable(),
    changeTangential: change.tangential.nullable(),
    /** Empty for none. */
    curveId: z.string(),
    linearA: linear.a.nullable(),
    linearB: linear.b.nullable(),
    note: shape.note.trim(),
    source: shape.source.trim(),
  })
  .superRefine((draft, context) => {
    checkPair(draft, ['changeRadial', 'changeTangential'], context);
    checkPair(draft, ['linearA', 'linearB'], context);
  })
  .transform(
    ({ changeRadial, changeTangential, linearA, linearB, ...draft }): Omit<Species, 'id'> => ({
      ...draft,
      botanicalName: draft.botanicalName || null,
      aliases: draft.aliases
        .split(/[,;\n]/)
        .map((alias) => alias.trim())
        .filter((alias) => alias !== ''),
      changeCoefficient:
        changeRadial === null || changeTangential === null
          ? null
          : { radial: changeRadial, tangential: changeTangential },
      curveId: draft.curveId || null,
      linear: linearA === null || linearB === null ? null : { a: linearA, b: linearB },
    }),
  );
export type SpeciesDraft = z.input<typeof speciesDraftSchema>;

export const draftOfSpecies = ({
  changeCoefficient,
  linear,
  ...species
}: Omit<Species, 'id'>): SpeciesDraft => ({
  ...species,
  botanicalName: species.botanicalName ?? '',
  aliases: species.aliases.join(', '),
  changeRadial: changeCoefficient?.radial ?? null,
  changeTangential: changeCoefficient?.tangential ?? null,
  curveId: species.curveId ?? '',
  linearA: linear?.a ?? null,
  linearB: linear?.b ?? null,
  source: sourceShown(species.source),
});

/** A species of which nothing is known but what it is called, if that. */
export const newSpeciesDraft = (name: string): SpeciesDraft =>
  draftOfSpecies({
    name,
    group: '',
    ...onlyNamed,
  });

/** A draft with the figures of another species and no name yet; `source` tells whose figures they are. */
export const draftDerivedFrom = (species: Species, source: string): SpeciesDraft => ({
  ...draftOfSpecies(deriveSpecies(species, { name: species.name, source }, new Set())),
  name: '',
});
