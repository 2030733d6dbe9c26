import { z } from 'zod';
import { givenExclusionSchema } from '../../probing/readings/exclusion.ts';
import { instantSchema } from '../../time.ts';
import { givenGramsSchema, newOvenCheckSchema, type OwnFit, ownFitSchema } from '../oven-checks.ts';
import { command, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { rowIdSchema } from '../yard.ts';

const ofCheck = z.object({ checkId: rowIdSchema });
const ofCheckOrWeight = ofCheck.extend({ weightId: rowIdSchema.nullable() });
const output = z.array(ownFitSchema);

/** All are of one species, and there is one at least once a check was changed. */
const topicsOf = (fits: readonly OwnFit[]): Topic[] =>
  fits.flatMap(({ checks }) => checks.slice(0, 1).map(({ speciesId }): Topic => `ovenChecks:${speciesId}`));

/** The person's own oven-dry checks of a species; every change answers with all of them, by meter. */
export const ovenCheckRequests = {
  'ovenChecks.ofSpecies': query({
    input: z.object({ speciesId: z.string().max(60) }),
    output,
    topics: ({ speciesId }) => ['species', 'meter', `ovenChecks:${speciesId}`],
  }),
  'ovenChecks.add': command({ input: newOvenCheckSchema, output, topics: (_, fits) => topicsOf(fits) }),
  /** A weight while it dries. */
  'ovenChecks.weigh': command({
    input: ofCheck.extend({ grams: givenGramsSchema, at: instantSchema }),
    output,
    topics: (_, fits) => topicsOf(fits),
  }),
  /** Excludes a check (`weightId` null) or one of its weights; it stays in the file. */
  'ovenChecks.exclude': command({
    input: ofCheckOrWeight.extend({ why: givenExclusionSchema }),
    output,
    topics: (_, fits) => topicsOf(fits),
  }),
  'ovenChecks.include': command({ input: ofCheckOrWeight, output, topics: (_, fits) => topicsOf(fits) }),
  /** Corrects readings of the species with that meter by the checks, or stops doing so. */
  'ovenChecks.useFit': command({
    input: z.object({ speciesId: z.string().max(60), meterId: rowIdSchema.nullable(), inUse: z.boolean() }),
    output,
    topics: (_, fits) => topicsOf(fits),
  }),
};
