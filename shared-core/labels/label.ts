import { z } from 'zod';
import { callSchema, spotsReadSchema } from '../probing/calls/assessment.ts';
import { averageIsSchema } from '../probing/readings/estimate.ts';
import { instantSchema } from '../time.ts';
import { type LabelField, usualFields } from './label-field.ts';

/** What one board's label is about. Its words are made where it is drawn (`label-lines.ts`). */
export const labelContentSchema = z.object({
  /** The board's ID, which is also what its code holds. */
  code: z.string().min(1).max(80),
  speciesName: z.string().max(200),
  thickness: z.object({
    thicknessMm: z.number().min(3).max(400),
    /** 8 for 8/4, where the person names it so. */
    quarters: z.number().int().nullable(),
  }),
  widthMm: z.number().nullable(),
  lengthMm: z.number().nullable(),
  /** What the wood is for. */
  endUseName: z.string().max(200),
  /** Of that use, % MC. */
  targetRange: z.object({ minPct: z.number(), maxPct: z.number() }),
  stackName: z.string().max(200),
  placeName: z.string().max(200),
  /** The log it came from; empty where not entered. */
  log: z.string().max(40),
  /** Local day; null where not entered. */
  sawnOn: z.iso.date().nullable(),
  /** The finding of its latest round; null before the first. */
  latest: z
    .object({
      at: instantSchema,
      /** Corrected MC, %; null where no reading of the round can be used. */
      averagePct: z.number().nullable(),
      averageIs: averageIsSchema.default('read'),
      shellPct: z.number().nullable(),
      corePct: z.number().nullable(),
      /** Nobody knows how deep it was read; left out where somebody does. */
      isDepthUnknown: z.literal(true).optional(),
      /** Its readings may be wrong; left out where that is not known. */
      isQuestionable: z.boolean().optional(),
      /** Where the average likely lies, %. */
      lowPct: z.number().nullable(),
      highPct: z.number().nullable(),
      /** Null where too few spots are read for one. */
      call: callSchema.nullable(),
      /** Null where there is a call. */
      spotsRead: spotsReadSchema.nullable().default(null),
    })
    .nullable(),
});
export type LabelContent = z.infer<typeof labelContentSchema>;
export type LabelFinding = NonNullable<LabelContent['latest']>;

/** A field of labels of which no row says anything by itself: it shows with each of these. */
const FINDING_FIELDS: readonly LabelField[] = ['call', 'mc', 'day', 'likely', 'shell-core'];
const SIZE_FIELDS: readonly LabelField[] = ['size', 'thickness'];

/**
 * What a printed label with these fields is out of date by. Not the exact MC, which a new look at the same readings may
 * move a little: a new round, or another call, is what a person at the stack would be misled by.
 */
export function labelGist(content: LabelContent, fields: readonly LabelField[] = usualFields): string {
  const has = (...any: readonly LabelField[]) => any.some((field) => fields.includes(field));
  const { code, latest } = content;
  const of = <T>(isShown: boolean, fact: T): T | undefined => (isShown ? fact : undefined);
  const isFound = has(...FINDING_FIELDS);
  // In this order since the first labels: those printed with the usual fields are compared with it.
  const board = {
    code,
    speciesName: of(has('species'), content.speciesName),
    thickness: of(has(...SIZE_FIELDS), content.thickness),
    widthMm: of(has('size'), content.widthMm),
    lengthMm: of(has('size'), content.lengthMm),
    endUseName: of(has('use'), content.endUseName),
    targetRange: of(has('target'), content.targetRange),
    stackName: of(has('stack'), content.stackName),
    placeName: of(has('place'), content.placeName),
    log: of(has('log'), content.log),
    sawnOn: of(has('sawn'), content.sawnOn),
  };
  const isQuestionable = has('mc') && latest?.isQuestionable === true;
  return JSON.stringify([
    board,
    of(isFound, latest?.at),
    of(isFound, latest?.call),
    ...(isQuestionable ? ['questionable'] : []),
  ]);
}
