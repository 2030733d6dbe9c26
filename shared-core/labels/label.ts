import { z } from 'zod';
import { callSchema, spotsReadSchema } from '../probing/calls/assessment.ts';
import { averageIsSchema } from '../probing/readings/estimate.ts';
import { instantSchema } from '../time.ts';

/** What one board's label is about. Its words are made where it is drawn (`label-lines.ts`). */
export const labelContentSchema = z.object({
  /** The board's ID, which is also what the QR code holds. */
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
  /** The finding of its latest round; null before the first. */
  latest: z
    .object({
      at: instantSchema,
      /** Corrected MC, %; null where no reading of the round can be used. */
      averagePct: z.number().nullable(),
      averageIs: averageIsSchema.default('read'),
      shellPct: z.number().nullable(),
      corePct: z.number().nullable(),
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

/**
 * What a printed label is out of date by. Not the exact MC, which a new look at the same readings may move a little: a
 * new round, or another call, is what a person at the stack would be misled by.
 */
export const labelGist = ({ latest, ...board }: LabelContent): string =>
  JSON.stringify([labelContentSchema.omit({ latest: true }).parse(board), latest?.at, latest?.call]);
