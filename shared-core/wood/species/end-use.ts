import { z } from 'zod';

/** What the wood is for, with its MC range. */
export const endUseSchema = z.object({
  id: z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
    .max(60),
  name: z.string().trim().min(1).max(80),
  /** The board's average must lie within these, % MC. */
  minPct: z.number().min(0).max(60),
  maxPct: z.number().min(1).max(200),
  /** Largest shell–core difference that the use allows, points of MC. */
  maxShellCorePct: z.number().min(0.5).max(100),
  /** What a person should know about it. */
  note: z.string().max(1000),
  /** Where its limits come from; "(from memory)" follows what nobody looked up. */
  source: z.string().max(1000),
});
/** As a person gives it: with a range that is one. */
export const newEndUseSchema = endUseSchema.refine(({ minPct, maxPct }) => maxPct > minPct, {
  path: ['maxPct'],
  error: 'use.turned',
});
export type EndUse = z.infer<typeof endUseSchema>;
