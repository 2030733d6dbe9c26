import { z } from 'zod';
import { exportKindSchema } from '../exchange.ts';
import { regionSchema } from '../region.ts';
import { command, ofWindow } from '../request-kinds.ts';
import { workSchema } from './work.ts';

/** What is on its way to the window: it asks for the parts by `backups.nextOfDownload`. */
const offeredSchema = z.object({ download: z.uuid(), sizeBytes: z.number().int(), fileName: z.string() });

/** Files of what a yard holds, for other programs and for other yards. */
export const exchangeRequests = {
  /** Of any open yard, the demo yard too. The window's next download takes its place. */
  'exchange.beginExport': ofWindow(
    command({
      input: z.object({ kind: exportKindSchema, region: regionSchema, work: workSchema }),
      output: offeredSchema,
      topics: () => [],
    }),
  ),
};
