import { z } from 'zod';
import { mediaTypeSchema } from '../pictures/picture.ts';
import { instantSchema } from '../time.ts';
import { rowIdSchema, versionSchema } from './yard.ts';

/** Longer is a note. */
export const captionSchema = z.string().trim().max(200);
/** SHA-256 of the picture's file, as hexadecimal digits. */
export const contentHashSchema = z
  .string()
  .length(64)
  .regex(/^[0-9a-f]{64}$/);
/** The longer side of a small picture, px. */
export const THUMBNAIL_PX = 320;
/** Those of all pictures that may be added at once go into one message. */
export const MOST_THUMBNAIL_LETTERS = 30_000;
/** A JPEG. */
export const thumbnailSchema = z.base64().max(MOST_THUMBNAIL_LETTERS);
/** Of one board, stack, round or reading. */
export const MOST_PICTURES = 100;

export const pictureSchema = z.object({
  id: rowIdSchema,
  version: versionSchema,
  contentHash: contentHashSchema,
  mediaType: mediaTypeSchema,
  bytes: z.number().int().positive(),
  /** Also what a screen reader says; empty where nobody wrote one. */
  caption: captionSchema,
  addedAt: instantSchema,
});
export type Picture = z.infer<typeof pictureSchema>;

/** One that was taken, and is to be added. */
export const newPictureSchema = z.object({
  contentHash: contentHashSchema,
  caption: captionSchema,
  thumbnail: thumbnailSchema.nullable(),
});
export type NewPicture = z.input<typeof newPictureSchema>;

export const shownPictureSchema = pictureSchema.extend({
  /** Null where it is still to be made. */
  thumbnail: thumbnailSchema.nullable(),
});
export type ShownPicture = z.infer<typeof shownPictureSchema>;
