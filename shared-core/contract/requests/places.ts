import { z } from 'zod';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { newPlaceSchema, placeEditSchema, placeRowSchema } from '../yard.ts';

export const placeRequests = {
  'places.list': query({
    input: nothingSchema,
    output: z.array(placeRowSchema),
    topics: () => ['places', 'stacks', 'boards', 'outlooks'],
  }),
  'places.add': command({ input: newPlaceSchema, output: placeRowSchema, topics: () => ['places'] }),
  'places.edit': command({ input: placeEditSchema, output: placeRowSchema, topics: () => ['places'] }),
};
