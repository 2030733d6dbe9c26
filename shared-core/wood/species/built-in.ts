import { z } from 'zod';
import endUseSeeds from '../../../seeds/end-uses.json' with { type: 'json' };
import speciesSeeds from '../../../seeds/species.json' with { type: 'json' };
import { type EndUse, endUseSchema } from './end-use.ts';
import { type Species, speciesSchema } from './species.ts';

/** The species that come with the app. The store has a person's own as well. */
export const builtInSpecies: readonly Species[] = z.array(speciesSchema).parse(speciesSeeds);

/** The uses that come with the app. */
export const builtInEndUses: readonly EndUse[] = z.array(endUseSchema).parse(endUseSeeds);
