import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import { unitsOfRegion } from '../../../shared-core/units/length.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import type { QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';
import type { LongWork } from '../long-work.ts';
import type { MakePdf } from '../pdf-thread.ts';
import { settingsOf } from '../yard/settings.ts';
import { checkSheet } from './check-sheet.ts';
import { type AskedForReports, createReportContent } from './report-content.ts';
import type { ReportToPrint } from './reports-worker.ts';

/** Reports of boards and stacks, and what tells whether a printed one states what is in this yard. */
export function reportQueries(
  context: QueryContext,
  ask: AskedForReports,
  longWork: LongWork,
  pdfOf: MakePdf<ReportToPrint>,
  pins: () => Pins | null,
) {
  const contentOf = createReportContent(context, ask, pins);
  return {
    'reports.content': contentOf,

    'reports.pdf': ({ paper, region, work, ...report }, window) =>
      longWork.run(window, work, async (underWay) => {
        const content = await contentOf(report);
        underWay.signal.throwIfAborted();
        const { units } = settingsOf(context.yard());
        const display = { ...region, units: units ?? unitsOfRegion(region.locale), today: null };
        const { say, formats } = createWords({ catalog: english, ...display });
        const pdf = await pdfOf({ content, paper, display }, underWay);
        const name = 'board' in content ? content.board.code : content.stack.name;
        return {
          pdfBase64: Buffer.from(pdf).toString('base64'),
          fileName: `${fileNameOf([say(`report.file.${content.kind}`), name])}-${formats.localDay(content.printedAt)}.pdf`,
        };
      }),

    'reports.check': checkSheet(context, ask),
  } satisfies Partial<Queries>;
}

/** Letters and digits of any script, so that every system takes it. */
const fileNameOf = (parts: readonly string[]): string =>
  parts.map((part) => part.replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/g, '')).join('-');
