import { z } from 'zod';

/** Structural: strength is no question of MC. Firewood: fire and pests. */
const useCautionSchema = z.enum(['structural', 'firewood']);
export type UseCaution = z.infer<typeof useCautionSchema>;

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
  /** How far above its target wood still works for it, points of MC: a board is ready where wetter than that is unlikely. */
  tolerancePoints: z.number().min(0).max(20),
  /** Drier wood serves as well: it need not take up moisture. */
  minIsAdvice: z.boolean(),
  /** Largest shell–core difference that the use allows, points of MC; null where any will do. */
  maxShellCorePct: z.number().min(0.5).max(100).nullable(),
  /** What is to be minded with wood that is ready for it (`probing/calls/cautions.ts`). */
  cautions: z.array(useCautionSchema).max(useCautionSchema.options.length),
  /** What a person should know about it. */
  note: z.string().max(1000),
  /** Where its limits come from; "(from memory)" follows what was not checked against a page. */
  source: z.string().max(1000),
});
/** As a person gives it: with a range that is one. */
export const newEndUseSchema = endUseSchema.refine(({ minPct, maxPct }) => maxPct > minPct, {
  path: ['maxPct'],
  error: 'use.turned',
});
export type EndUse = z.infer<typeof endUseSchema>;

/**
 * What a use that says nothing of it allows beyond its target: indoor work least, and outdoors drier wood serves as
 * well. Common practice, no source.
 */
export function usualTolerance({
  minPct,
  maxPct,
}: Pick<EndUse, 'minPct' | 'maxPct'>): Pick<EndUse, 'tolerancePoints' | 'minIsAdvice'> {
  const tolerancePoints = maxPct <= 13 ? 2 : maxPct <= 16 ? 3 : 4;
  return { tolerancePoints, minIsAdvice: minPct === 0 || maxPct >= 14 };
}
