import { z } from 'zod';
import type { Outcome } from '../outcome.ts';
import { type Message, message } from '../words/message.ts';
import { cleanJpeg, isJpeg } from './jpeg.ts';
import { cleanPng, isPng } from './png.ts';
import { cleanWebp, isWebp } from './webp.ts';

/** Larger files are refused. */
export const MOST_PICTURE_BYTES = 25 * 1024 * 1024;
/** A small file can be a picture that no computer has memory for. */
export const MOST_PIXELS = 100_000_000;

export const mediaTypeSchema = z.enum(['image/jpeg', 'image/png', 'image/webp']);
export type MediaType = z.infer<typeof mediaTypeSchema>;

/** A picture as it is saved: as it was taken, without where and by what, but with how it is turned. */
export interface CleanPicture {
  mediaType: MediaType;
  /** Before it is turned. */
  widthPx: number;
  heightPx: number;
  bytes: Uint8Array;
}

const kinds = [
  { is: isJpeg, clean: cleanJpeg },
  { is: isPng, clean: cleanPng },
  { is: isWebp, clean: cleanWebp },
];

/**
 * A file as a picture, by its bytes and not by its name. What is drawn stays as it is, to the bit. Place, time, camera,
 * comments, previews and whatever follows the picture are left out.
 */
export function cleanPicture(bytes: Uint8Array): Outcome<CleanPicture> {
  const kind = kinds.find(({ is }) => is(bytes));
  if (kind === undefined) return refused(message('refusal.picture-unknown'));
  const picture = kind.clean(bytes);
  if (picture === null || picture.widthPx === 0 || picture.heightPx === 0) {
    return refused(message('refusal.picture-incomplete'));
  }
  if (picture.widthPx * picture.heightPx > MOST_PIXELS)
    return refused(message('refusal.picture-too-many-pixels'));
  return { ok: true, value: picture };
}

const refused = (problem: Message): Outcome<never> => ({ ok: false, problem });
