import { z } from 'zod';
import { labelContentSchema } from '../../labels/label.ts';
import { regionSchema } from '../region.ts';
import { query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { rowIdSchema } from '../yard.ts';

const ofBoards = z.object({ boardIds: z.array(rowIdSchema).min(1).max(2000) });
const topics = (): Topic[] => ['boards', 'species', 'settings'];

export const labelRequests = {
  'labels.contents': query({ input: ofBoards, output: z.array(labelContentSchema), topics }),
  'labels.pdf': query({
    input: ofBoards.extend({
      kind: z.enum(['sheet', 'single']),
      /** Labels already used on the first sheet. */
      used: z.number().int().min(0).max(500),
      region: regionSchema,
    }),
    output: z.object({ pdfBase64: z.string(), fileName: z.string() }),
    topics,
  }),
};
