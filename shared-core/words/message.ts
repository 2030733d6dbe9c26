import { z } from 'zod';
import type { Code, English } from './en/index.ts';
import type { FactsOf } from './facts-of.ts';

/** A range of moisture contents, % MC. */
export interface PctRange {
  minPct: number;
  maxPct: number;
}

/** The first and the last day of a stretch of days, local ISO days. */
export interface DayRange {
  from: string;
  to: string;
}

/** The day on which something likely happens, and the days between which it happens with 8 chances in 10. */
export interface When {
  /** Local ISO days or UTC instants. */
  likely: string;
  from: string;
  /** Null where that is beyond what a forecast looks at. */
  to: string | null;
}

/** A thickness as sawn, with its name in quarters of an inch where the person uses those. */
export interface Thickness {
  thicknessMm: number;
  /** 8 for 8/4. */
  quarters: number | null;
}

/** A board's thickness, for a sentence about it. */
export const thicknessOf = (board: {
  thicknessMm: number;
  thicknessQuarters?: number | null;
}): Thickness => ({
  thicknessMm: board.thicknessMm,
  quarters: board.thicknessQuarters ?? null,
});

type OneFact = number | string | Message | PctRange | DayRange | When | Thickness;
/** One thing a sentence is about: SI numbers, ISO days and instants, names, further messages, or a list of such. */
export type Fact = OneFact | readonly OneFact[];
export type Facts = { readonly [name: string]: Fact };

/**
 * A sentence before it is in anyone's language and units: which one of the catalog, and what it is about. It is plain
 * JSON, so a yard file can store it and a refusal can carry it to the window.
 */
export interface Message {
  code: Code;
  facts?: Facts | undefined;
}

/** What follows a code: its facts, or nothing where its sentence has none. */
export type FactsArgument<C extends Code> = keyof FactsOf<English[C]> extends never
  ? []
  : [facts: FactsOf<English[C]>];

/**
 * A message of the catalog with the facts that its sentence asks for.
 * @example message('call.too-wet', { averagePct: 14.9, targetRange: { minPct: 6, maxPct: 8 } })
 */
export function message<C extends Code>(code: C, ...[facts]: FactsArgument<C>): Message {
  return facts === undefined ? { code } : { code, facts: facts as Facts };
}

/** A code may be of a newer Pintally than this one: it is checked where it is shown, not where it is read. */
const codeSchema = z.custom<Code>((value) => typeof value === 'string');

const oneFactSchema: z.ZodType<OneFact> = z.union([
  z.number(),
  z.string(),
  z.lazy(() => messageSchema),
  z.strictObject({ minPct: z.number(), maxPct: z.number() }),
  z.strictObject({ from: z.string(), to: z.string() }),
  z.strictObject({ likely: z.string(), from: z.string(), to: z.string().nullable() }),
  z.strictObject({ thicknessMm: z.number(), quarters: z.number().int().nullable() }),
]);

export const messageSchema: z.ZodType<Message> = z.strictObject({
  code: codeSchema,
  facts: z.record(z.string(), z.union([oneFactSchema, z.array(oneFactSchema)])).optional(),
});
