import { z } from 'zod';
import { paperSchema } from '../../drawing/paper.ts';
import { regionSchema } from '../region.ts';
import { reportCheckSchema, reportContentSchema, reportSchema } from '../report.ts';
import { query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { workSchema } from './work.ts';

const topics = (): Topic[] => [
  'boards',
  'stacks',
  'places',
  'species',
  'endUses',
  'outlooks',
  'meters',
  'settings',
];

export const reportRequests = {
  /** What a report is about, to draw it. */
  'reports.content': query({ input: reportSchema, output: reportContentSchema, topics }),
  'reports.pdf': query({
    input: reportSchema.extend({ paper: paperSchema, region: regionSchema, work: workSchema }),
    output: z.object({ pdfBase64: z.string(), fileName: z.string() }),
    topics,
  }),
  /** Whether the sheet with this check code still says what is in this yard. */
  'reports.check': query({
    input: z.object({ checkCode: z.string().max(80) }),
    output: reportCheckSchema,
    topics,
  }),
};
