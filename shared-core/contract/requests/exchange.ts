import { z } from 'zod';
import { leftListSchema } from '../archive.ts';
import { exportKindSchema, MOST_CLASHES_SHOWN, mergedSchema, sideSchema } from '../exchange.ts';
import { regionSchema } from '../region.ts';
import { command, ofMachine, ofWindow, query } from '../request-kinds.ts';
import { yardInfoSchema } from '../yard.ts';
import { workSchema } from './work.ts';

const pathSchema = z.string().trim().min(1).max(4000);

/** What is on its way to the window: it asks for the parts by `backups.nextOfDownload`. */
const offeredSchema = z.object({ download: z.uuid(), sizeBytes: z.number().int(), fileName: z.string() });

/** Files of what a yard holds, for other programs and for other yards. */
export const exchangeRequests = {
  /** Of any open yard, the demo yard too. The window's next download takes its place. */
  'exchange.beginExport': ofWindow(
    command({
      input: z.object({
        kind: exportKindSchema,
        /** Of the boards, those that left the yard and that their list shows; null: every board. */
        left: leftListSchema.nullable().default(null),
        region: regionSchema,
        work: workSchema,
      }),
      output: offeredSchema.extend({
        /** Pictures whose files are missing or damaged, so that they are not in it. */
        missingPictures: z.number().int(),
      }),
      topics: () => [],
    }),
  ),
  /** What bringing a yard file, a backup or an export into the own yard would come to; nothing is changed. */
  'exchange.look': ofMachine(
    query({
      input: z.object({ file: pathSchema, work: workSchema }),
      output: mergedSchema,
      topics: () => ['yard'],
    }),
  ),
  /** Does it, after a backup. Whose version of a record holds where both edited it: `rest`; of `others` the other's. */
  'exchange.merge': ofMachine(
    command({
      input: z.object({
        file: pathSchema,
        /** What the person calls it: History names it. */
        fileName: pathSchema,
        rest: sideSchema,
        others: z.array(z.uuid()).max(MOST_CLASHES_SHOWN),
        work: workSchema,
      }),
      output: yardInfoSchema,
      topics: () => ['yard'],
    }),
  ),
};
