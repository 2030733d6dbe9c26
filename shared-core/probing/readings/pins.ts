import { z } from 'zod';

/** The pins of a meter; each null where unknown. Uninsulated ones read the wettest layer they touch. */
export const pinsSchema = z.object({
  /** How far they go into the wood, mm. */
  lengthMm: z.number().positive().max(200).nullable(),
  insulated: z.boolean().nullable(),
});
export type Pins = z.infer<typeof pinsSchema>;
