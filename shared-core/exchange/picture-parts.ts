import { z } from 'zod';
import { contentHashSchema } from '../contract/pictures.ts';
import { MOST_PICTURE_BYTES } from '../pictures/picture.ts';

/** How much of a picture's file is in one record, bytes: its text is shorter than the longest record. */
export const PICTURE_PART_BYTES = 512 * 1024;
const MOST_PARTS = MOST_PICTURE_BYTES / PICTURE_PART_BYTES;
/** Base64 has 4 characters for each 3 bytes (RFC 4648, section 4). */
const MOST_BASE64_LENGTH = 4 * Math.ceil(PICTURE_PART_BYTES / 3);

/** Under this name an export has the files of its pictures, behind all records. */
export const PICTURE_FILES = 'pictureFiles';

/** A part of a picture's file. The parts of a file follow each other, the first of them first. */
export const picturePartSchema = z.strictObject({
  /** SHA-256 of the whole file, in hexadecimal, as records of pictures name it. */
  contentHash: contentHashSchema,
  /** From 1. */
  part: z.int().min(1).max(MOST_PARTS),
  /** Of the whole file. */
  parts: z.int().min(1).max(MOST_PARTS),
  /** Its bytes (RFC 4648, section 4). */
  base64: z.string().max(MOST_BASE64_LENGTH),
});
export type PicturePart = z.infer<typeof picturePartSchema>;
