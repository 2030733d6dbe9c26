import { z } from 'zod';
import { endUseSchema, newEndUseSchema } from '../../wood/species/end-use.ts';
import { speciesSchema } from '../../wood/species/species.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { versionSchema } from '../yard.ts';

const saved = {
  version: versionSchema,
  builtIn: z.boolean(),
  /** The disk damaged it: what could not be read has a stand-in, until it is saved again. */
  isDamaged: z.boolean().optional(),
};
export const speciesRowSchema = speciesSchema.extend(saved);
export type SpeciesRow = z.infer<typeof speciesRowSchema>;
export const endUseRowSchema = endUseSchema.extend(saved);
export type EndUseRow = z.infer<typeof endUseRowSchema>;

/** As `editOf`; these have names for ids. */
const editOfNamed = <Shape extends z.ZodRawShape>(fields: z.ZodObject<Shape>) =>
  z.object({ id: z.string().max(60), basedOn: versionSchema, changed: fields.partial() });

/** Species and end uses: the built-in ones and the person's own. A built-in one that is edited becomes the person's. */
export const catalogRequests = {
  'species.list': query({
    input: nothingSchema,
    output: z.array(speciesRowSchema),
    topics: () => ['species'],
  }),
  'species.add': command({ input: speciesSchema, output: speciesRowSchema, topics: () => ['species'] }),
  'species.edit': command({
    input: editOfNamed(speciesSchema.omit({ id: true })),
    output: speciesRowSchema,
    topics: () => ['species'],
  }),
  'endUses.list': query({
    input: nothingSchema,
    output: z.array(endUseRowSchema),
    topics: () => ['endUses'],
  }),
  'endUses.add': command({ input: newEndUseSchema, output: endUseRowSchema, topics: () => ['endUses'] }),
  'endUses.edit': command({
    input: editOfNamed(endUseSchema.omit({ id: true })),
    output: endUseRowSchema,
    topics: () => ['endUses'],
  }),
};
