import { z } from 'zod';
import { messageSchema } from '../words/message.ts';

/** What a stack amounts to, from the boards whose width and length are known. */
export const stackVolumeSchema = z.object({
  boards: z.number().int(),
  /** Boards with all three sizes. */
  measured: z.number().int(),
  /** By the trade's rounding, board by board. */
  boardFeet: z.number(),
  cubicMeters: z.number(),
  /** Mass now and at the target of its use, of the probed boards of species with a known density; null without such. */
  mass: z.object({ boards: z.number().int(), nowKg: z.number(), targetKg: z.number() }).nullable(),
  targetPct: z.number(),
  /** Which boards are in none of these, and why. */
  missing: z.array(messageSchema),
});
export type StackVolume = z.infer<typeof stackVolumeSchema>;
