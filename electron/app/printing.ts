import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { Region } from '../../shared-core/contract/region.ts';
import type { Printed } from '../../shared-core/contract/requests/printers.ts';
import type { PrintQueue } from '../print/print-queue.ts';
import { writeWhole } from '../store/backup-place.ts';
import type { Commands, Queries } from './handlers.ts';
import type { LongWork, UnderWay } from './long-work.ts';
import type { PdfFile } from './pdf-thread.ts';
import type { Reports } from './reports/reports.ts';
import type { LabelPdfs } from './stock/labels.ts';

const chosenSchema = z.record(z.string(), z.string());

/**
 * Printing without a dialog. Which printer was chosen for a paper is saved beside the yard and not in it: it is of this
 * computer, and the yard may be opened on another.
 */
export function createPrinting(
  queue: PrintQueue,
  dataDir: string,
  longWork: LongWork,
  { labels, reports }: { labels: LabelPdfs; reports: Reports },
) {
  const file = join(dataDir, 'printers.json');

  function chosen(): Record<string, string> {
    try {
      return chosenSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
    } catch {
      // Nothing was chosen yet; where it cannot be read, the person chooses again.
      return {};
    }
  }

  function pdfOf(pages: Printed, region: Region, underWay: UnderWay): Promise<PdfFile> {
    switch (pages.kind) {
      case 'labels':
        return labels.labels({ ...pages, region }, underWay);
      case 'calibration':
        return labels.calibration({ ...pages, region }, underWay);
      case 'report':
        return reports.pdf({ ...pages.report, paper: pages.paper, region }, underWay);
    }
  }

  return {
    queries: {
      'printers.list': async () => ({
        printers:
          (await queue.printers())?.map(({ name, title, stopped }) => ({
            name,
            title,
            isStopped: stopped !== null,
          })) ?? null,
        chosen: chosen(),
      }),
    } satisfies Partial<Queries>,
    commands: {
      'printers.choose': ({ paper, printer }) => {
        const { [paper]: _, ...others } = chosen();
        writeWhole(file, JSON.stringify(printer === null ? others : { ...others, [paper]: printer }));
        return {};
      },
      'printers.print': ({ printer, pages, region, work }, window) =>
        longWork.run(window, work, async (underWay) => {
          const { pdf, fileName, widthMm, heightMm } = await pdfOf(pages, region, underWay);
          return queue.print({ printer, pdf, title: fileName, widthMm, heightMm }, underWay.signal);
        }),
    } satisfies Partial<Commands>,
  };
}
