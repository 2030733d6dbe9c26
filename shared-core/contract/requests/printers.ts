import { z } from 'zod';
import { paperSchema } from '../../drawing/paper.ts';
import { regionSchema } from '../region.ts';
import { reportSchema } from '../report.ts';
import { command, nothingSchema, ofMachine, ofWindow, query } from '../request-kinds.ts';
import { labelsToPrintSchema, paperIdSchema } from './labels.ts';
import { workSchema } from './work.ts';

const printerName = z.string().min(1).max(200);

const printerSchema = z.object({
  name: z.string(),
  /** As the person's system shows it. */
  title: z.string(),
  isStopped: z.boolean(),
});
export type Printer = z.infer<typeof printerSchema>;

/** What a printer is remembered for: the id of a paper of labels, or the size of a report. */
const printedOn = z.union([paperSchema, paperIdSchema]);

/** Pages that Pintally makes. */
const printedSchema = z.discriminatedUnion('kind', [
  labelsToPrintSchema.extend({ kind: z.literal('labels') }),
  z.object({ kind: z.literal('calibration'), paperId: paperIdSchema }),
  z.object({ kind: z.literal('report'), report: reportSchema, paper: paperSchema }),
]);
export type Printed = z.infer<typeof printedSchema>;

export const printerRequests = {
  /** The printers of this computer, null where it has no print queue; and which one was chosen for each paper. */
  'printers.list': ofMachine(
    query({
      input: nothingSchema,
      output: z.object({
        printers: z.array(printerSchema).nullable(),
        chosen: z.record(z.string(), z.string()),
      }),
      topics: () => ['printers'],
    }),
  ),
  /** Remembers it for a paper, on this computer; null for the print dialog. */
  'printers.choose': ofMachine(
    command({
      input: z.object({ paper: printedOn, printer: printerName.nullable() }),
      output: nothingSchema,
      topics: () => ['printers'],
    }),
  ),
  /** Prints without a dialog. `waiting`: it is still in the queue; `why` has the queue's own words, which may be none. */
  'printers.print': ofWindow(
    command({
      input: z.object({
        printer: printerName,
        pages: printedSchema,
        region: regionSchema,
        work: workSchema,
      }),
      output: z.object({ state: z.enum(['printed', 'waiting']), why: z.string() }),
      topics: () => [],
    }),
  ),
};
