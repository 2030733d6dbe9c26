import { z } from 'zod';
import { MOST_PICTURE_BYTES } from '../../pictures/picture.ts';
import { subjectPlaceSchema, subjectSchema } from '../notes.ts';
import {
  captionSchema,
  contentHashSchema,
  MOST_PICTURES,
  newPictureSchema,
  shownPictureSchema,
} from '../pictures.ts';
import { command, ofWindow, query } from '../request-kinds.ts';
import { editOf, rowIdSchema } from '../yard.ts';
import { placeTopics, subjectTopics } from './notes.ts';

const byId = z.object({ id: rowIdSchema });
const place = z.object({ place: subjectPlaceSchema });

export const pictureRequests = {
  /** The oldest first. */
  'pictures.list': query({
    input: z.object({ subject: subjectSchema }),
    output: z.array(shownPictureSchema),
    topics: ({ subject }) => subjectTopics(subject),
  }),
  /** A part of a picture's file from `offset` on; with the first, the whole of it is checked. */
  'pictures.read': query({
    input: byId.extend({ offset: z.number().int().min(0).max(MOST_PICTURE_BYTES) }),
    output: z.object({ base64: z.base64() }),
    topics: () => [],
  }),
  /** Checks a file that the window uploaded, and saves it beside the yard; `pictures.add` then says what it is of. */
  'pictures.take': ofWindow(
    command({
      input: z.object({ file: z.string().max(4000) }),
      output: z.object({ contentHash: contentHashSchema }),
      topics: () => [],
    }),
  ),
  /** All of them or none. */
  'pictures.add': command({
    input: z.object({
      subject: subjectSchema,
      pictures: z.array(newPictureSchema).min(1).max(MOST_PICTURES),
    }),
    output: place.extend({ ids: z.array(rowIdSchema) }),
    topics: (_, { place }) => placeTopics(place),
  }),
  'pictures.edit': command({
    input: editOf(z.object({ caption: captionSchema })),
    output: place,
    topics: (_, { place }) => placeTopics(place),
  }),
  /** Its file stays for a month, so that this can be undone. */
  'pictures.delete': command({
    input: byId,
    /** The act, to undo it. */
    output: place.extend({ act: z.uuid() }),
    topics: (_, { place }) => placeTopics(place),
  }),
};
