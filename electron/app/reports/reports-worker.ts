/** Draws a report and writes it as a PDF on a thread, so that no reading waits for 1,000 boards. */
import { parentPort } from 'node:worker_threads';
import type { ReportContent } from '../../../shared-core/contract/report.ts';
import type { Paper } from '../../../shared-core/drawing/paper.ts';
import { shapedPages, textsOfPages } from '../../../shared-core/drawing/shaped-pages.ts';
import { drawReport, reportTitle } from '../../../shared-core/reports/draw-report.ts';
import type { Display } from '../../../shared-core/words/formats.ts';
import { catalogFor } from '../../../shared-core/words/languages.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { pdfOf } from '../../print/pdf.ts';
import { createShaper } from '../../print/shape-text.ts';
import { answerQuestions } from '../own-thread.ts';

export interface ReportToPrint {
  content: ReportContent;
  paper: Paper;
  display: Display;
}

const shape = createShaper();

answerQuestions(parentPort, async ({ content, paper, display }: ReportToPrint, tell): Promise<Uint8Array> => {
  const words = createWords({ catalog: await catalogFor(display.locale), ...display });
  const createdAt = new Date(content.printedAt);
  const meta = { title: reportTitle(content, words), locale: display.locale, createdAt };
  const pages = drawReport(content, paper, words);
  return pdfOf(shapedPages(pages, shape(textsOfPages(pages))), meta, tell);
});
