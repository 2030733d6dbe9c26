import type { Region } from '../../../shared-core/contract/region.ts';
import type { Report } from '../../../shared-core/contract/report.ts';
import { type Paper, paperSizes } from '../../../shared-core/drawing/paper.ts';
import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import { reportName } from '../../../shared-core/reports/draw-report.ts';
import { unitsOfRegion } from '../../../shared-core/units/length.ts';
import { catalogFor } from '../../../shared-core/words/languages.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import type { QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';
import type { LongWork, UnderWay } from '../long-work.ts';
import { type MakePdf, type PdfFile, toWindow } from '../pdf-thread.ts';
import { settingsOf } from '../yard/settings.ts';
import { checkSheet } from './check-sheet.ts';
import { type AskedForReports, createReportContent } from './report-content.ts';
import type { ReportToPrint } from './reports-worker.ts';

/** Reports of boards and stacks: their contents, and as PDFs. */
export function createReports(
  context: QueryContext,
  ask: AskedForReports,
  pdfOf: MakePdf<ReportToPrint>,
  pins: () => Pins | null,
) {
  const contentOf = createReportContent(context, ask, pins);
  return {
    contentOf,
    async pdf(
      { paper, region, ...report }: Report & { paper: Paper; region: Region },
      underWay: UnderWay,
    ): Promise<PdfFile> {
      const content = await contentOf(report);
      underWay.signal.throwIfAborted();
      const { units } = settingsOf(context.yard());
      const display = { ...region, units: units ?? unitsOfRegion(region.locale), today: null };
      const words = createWords({ catalog: await catalogFor(display.locale), ...display });
      const { say, formats } = words;
      return {
        pdf: await pdfOf({ content, paper, display }, underWay),
        fileName: `${fileNameOf([say(`report.file.${content.kind}`), reportName(content, words)])}-${formats.localDay(content.printedAt)}.pdf`,
        ...paperSizes[paper],
      };
    },
  };
}
export type Reports = ReturnType<typeof createReports>;

/** Them, and what tells whether a printed one states what is in this yard. */
export const reportQueries = (
  context: QueryContext,
  ask: AskedForReports,
  longWork: LongWork,
  reports: Reports,
) =>
  ({
    'reports.content': reports.contentOf,

    'reports.pdf': ({ work, ...report }, window) =>
      longWork.run(window, work, async (underWay) => toWindow(await reports.pdf(report, underWay))),

    'reports.check': checkSheet(context, ask),
  }) satisfies Partial<Queries>;

/** Letters and digits of any script, so that every system takes it. */
const fileNameOf = (parts: readonly string[]): string =>
  parts.map((part) => part.replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/g, '')).join('-');
