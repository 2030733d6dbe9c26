import { z } from 'zod';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { newPlaceSchema, placeRowSchema, placeSchema } from '../yard.ts';

export const placeRequests = {
  'places.list': query({ input: nothingSchema, output: z.array(placeRowSchema), topics: () => ['places'] }),
  'places.add': command({ input: newPlaceSchema, output: placeRowSchema, topics: () => ['places'] }),
  'places.change': command({ input: placeSchema, output: placeRowSchema, topics: () => ['places'] }),
};
