import { z } from 'zod';
import { shapesSchema } from '../../drawing/shapes.ts';
import { labelContentSchema } from '../../labels/label.ts';
import { callSchema } from '../../probing/calls/assessment.ts';
import { regionSchema } from '../region.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { boardFilterSchema, rowIdSchema } from '../yard.ts';
import { workSchema } from './work.ts';

/** The most labels that are made at once. */
export const MOST_LABELS = 2000;
const MOST_TEXTS = 20 * MOST_LABELS;

/** Each once: a label is for one board. */
const boardIds = z
  .array(rowIdSchema)
  .max(MOST_LABELS)
  .refine((ids) => new Set(ids).size === ids.length);
const topics = (): Topic[] => ['boards', 'species', 'endUses', 'stacks', 'settings'];

/** A board as far as choosing it for a label needs it. */
const labelBoardSchema = z.object({
  id: rowIdSchema,
  code: z.string(),
  speciesName: z.string(),
  /** Null before the first round. */
  call: callSchema.nullable(),
  /** `outdated`: its call, day, size, species or use is another now than on the newest label. */
  label: z.enum(['none', 'current', 'outdated']),
});
export type LabelBoard = z.infer<typeof labelBoardSchema>;

export const labelFilterSchema = boardFilterSchema.exclude(['elsewhere', 'archived']);

export const paperIdSchema = z.string().max(40);

/** Labels of boards on one of the papers. */
export const labelsToPrintSchema = z.object({
  boardIds: boardIds.min(1),
  paperId: paperIdSchema,
  /** Labels already used on the first sheet. */
  used: z.number().int().min(0).max(1200),
});
export type LabelsAsked = z.infer<typeof labelsToPrintSchema>;

export const labelRequests = {
  /** The first `MOST_LABELS` boards to choose from, of one call where that is given, with how many there are. */
  'labels.boards': query({
    input: z.object({
      stackId: rowIdSchema.nullable(),
      search: z.string().max(80),
      filter: labelFilterSchema.nullable().default(null),
    }),
    output: z.object({ total: z.number().int(), boards: z.array(labelBoardSchema) }),
    topics: () => [...topics(), 'labels'],
  }),
  /** The board whose label says so, capitals or not; null where none in the yard has that ID. */
  'labels.boardOf': query({
    input: z.object({ code: z.string().max(200) }),
    output: z.object({ boardId: rowIdSchema.nullable() }),
    topics: () => ['boards'],
  }),
  /** In the order of the boards; null for one that is not in this yard. */
  'labels.contents': query({
    input: z.object({ boardIds }),
    output: z.array(labelContentSchema.nullable()),
    topics,
  }),
  'labels.pdf': query({
    input: labelsToPrintSchema.extend({ region: regionSchema, work: workSchema }),
    output: z.object({ pdfBase64: z.string(), fileName: z.string() }),
    topics,
  }),
  /** The letters of texts of which the fonts have not all, for the preview. */
  'labels.shapes': query({
    input: z.object({ texts: z.array(z.string().max(400)).max(MOST_TEXTS) }),
    output: shapesSchema,
    topics: () => [],
  }),
  /** The page that a printer's offset and scale are measured on, as a PDF. */
  'labels.calibrationPdf': query({
    input: z.object({ paperId: paperIdSchema, region: regionSchema }),
    output: z.object({ pdfBase64: z.string(), fileName: z.string() }),
    topics: () => ['settings'],
  }),
  /** Records that the boards' labels, as they now are on that paper, were printed or saved to be printed. */
  'labels.recordPrint': command({
    input: z.object({ boardIds: boardIds.min(1), paperId: paperIdSchema }),
    output: nothingSchema,
    topics: () => ['labels'],
  }),
};
