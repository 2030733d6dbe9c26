import { z } from 'zod';
import { endUseSchema } from '../../wood/species/end-use.ts';
import { speciesSchema } from '../../wood/species/species.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';

/** Species and end uses: the built-in ones and the person's own. */
export const catalogueRequests = {
  'species.list': query({
    input: nothingSchema,
    output: z.array(speciesSchema.extend({ builtIn: z.boolean() })),
    topics: () => ['species'],
  }),
  'species.save': command({ input: speciesSchema, output: speciesSchema, topics: () => ['species'] }),
  'endUses.list': query({
    input: nothingSchema,
    output: z.array(endUseSchema.extend({ builtIn: z.boolean() })),
    topics: () => ['endUses'],
  }),
  'endUses.save': command({ input: endUseSchema, output: endUseSchema, topics: () => ['endUses'] }),
};
