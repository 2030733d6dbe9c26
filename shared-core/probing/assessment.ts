import { z } from 'zod';
import { judgedReadingSchema } from './reading.ts';

/** What the wood is for, with its MC range. */
export const useSchema = z.object({
  id: z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
    .max(60),
  name: z.string().trim().min(1).max(80),
  /** The board's average must lie within these, % MC. */
  minPct: z.number().min(0).max(60),
  maxPct: z.number().min(1).max(200),
  /** Largest difference of core over shell that the use allows, % MC. */
  maxShellCorePct: z.number().min(0.5).max(100),
  /** Whether wood for it must be brought indoors before it is ready, whatever it reads. */
  note: z.string().max(1000),
});
export type Use = z.infer<typeof useSchema>;

/** The state of a board as one round found it, % MC. */
export const estimateSchema = z.object({
  averagePct: z.number(),
  shellPct: z.number().nullable(),
  corePct: z.number().nullable(),
  /** Core less shell. */
  differencePct: z.number().nullable(),
  /** Standard uncertainty of `averagePct`: meter, species correction and scatter between spots. */
  standardUncertaintyPct: z.number(),
  /** The average lies in here with 90 % probability. */
  lowPct: z.number(),
  highPct: z.number(),
  countedShell: z.number().int(),
  countedCore: z.number().int(),
});
export type Estimate = z.infer<typeof estimateSchema>;

export const verdictSchema = z.enum(['ready', 'bring-in', 'keep-drying', 'probe-again']);
export type Verdict = z.infer<typeof verdictSchema>;

/** The verdict on a board with its reasons; the first reason is the one that decides. */
export const callSchema = z.object({
  verdict: verdictSchema,
  reasons: z.array(z.string()).min(1),
});
export type Call = z.infer<typeof callSchema>;

/** Everything made of one board's readings in one round. */
export const assessmentSchema = z.object({
  readings: z.array(judgedReadingSchema),
  estimate: estimateSchema.nullable(),
  call: callSchema,
});
export type Assessment = z.infer<typeof assessmentSchema>;
