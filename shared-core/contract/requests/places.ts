import { z } from 'zod';
import { command, nothingSchema, query } from '../request-kinds.ts';
import {
  closedPlaceSchema,
  nameSchema,
  newPlaceSchema,
  placeEditSchema,
  placeRowSchema,
  rowIdSchema,
  versionSchema,
} from '../yard.ts';
import { workSchema } from './work.ts';

const asShown = z.object({ id: rowIdSchema, basedOn: versionSchema });

export const placeRequests = {
  'places.list': query({
    input: nothingSchema,
    output: z.array(placeRowSchema),
    topics: () => ['places', 'stacks', 'boards', 'outlooks'],
  }),
  'places.add': command({ input: newPlaceSchema, output: placeRowSchema, topics: () => ['places'] }),
  'places.edit': command({ input: placeEditSchema, output: placeRowSchema, topics: () => ['places'] }),
  /** The newest first. */
  'places.closed': query({
    input: nothingSchema,
    output: z.array(closedPlaceSchema),
    topics: () => ['places'],
  }),
  /** It leaves the lists; refused while boards, stacks or planned moves are of it. What was there keeps its history. */
  'places.close': command({
    input: asShown,
    output: z.object({ act: z.uuid() }),
    topics: () => ['places', 'outlooks'],
  }),
  'places.reopen': command({
    input: asShown.extend({
      /** Another name, where its own is another place's by now. */
      name: nameSchema.nullable().default(null),
    }),
    output: placeRowSchema,
    topics: () => ['places', 'outlooks'],
  }),
  /** Refused where anything was ever there. */
  'places.delete': command({
    input: asShown,
    output: z.object({ act: z.uuid() }),
    topics: () => ['places', 'outlooks'],
  }),
  /** All that is or was there counts as there in another place; it is closed then. */
  'places.merge': command({
    input: asShown.extend({
      intoId: rowIdSchema,
      /** Whose air is right: that of the other place, or that of this one, which the other gets. */
      air: z.enum(['into', 'own']),
      work: workSchema,
    }),
    output: placeRowSchema,
    topics: () => ['yard'],
  }),
};
