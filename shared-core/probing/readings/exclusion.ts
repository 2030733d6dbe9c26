import { z } from 'zod';

/** Why something measured is left out: what a person wrote, or a code where the program knows the reason. */
export const exclusionSchema = z.union([
  z.object({ code: z.enum(['undone-in-round']) }),
  z.object({ text: z.string() }),
]);
export type Exclusion = z.infer<typeof exclusionSchema>;
