import { z } from 'zod';

/** What a stack amounts to, from the boards whose width and length are known. */
export const stackVolumeSchema = z.object({
  boards: z.number().int(),
  /** Boards with all three sizes. */
  measured: z.number().int(),
  /** By the trade's rounding, board by board. */
  boardFeet: z.number(),
  cubicMetres: z.number(),
  /** Mass now and at what its use wants, of the boards that were probed and whose wood's density is known; null where there are none. */
  mass: z.object({ boards: z.number().int(), nowKg: z.number(), targetKg: z.number() }).nullable(),
  endUseName: z.string(),
  targetPct: z.number(),
  /** What is left out and why, as sentences. */
  missing: z.array(z.string()),
});
export type StackVolume = z.infer<typeof stackVolumeSchema>;
