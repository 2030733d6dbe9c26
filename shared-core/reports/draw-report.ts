import type { ReportContent } from '../contract/report.ts';
import type { DrawnPage } from '../drawing/page.ts';
import type { Paper } from '../drawing/paper.ts';
import type { Words } from '../words/words.ts';
import { buyerList } from './buyer-list.ts';
import { buyerSheet } from './buyer-sheet.ts';
import { createFlow, type Flow } from './flow.ts';
import { passport } from './passport.ts';
import { stackList } from './stack-list.ts';
import { stackReport } from './stack-report.ts';

/** What a report is of: a board, a stack, or so many boards. */
export function reportName(content: ReportContent, { say }: Words): string {
  if ('board' in content) return content.board.code;
  return content.stack?.name ?? say('report.boards-of', { boards: content.boards.length });
}

/** What a report is called: "Board passport: OAK-07". */
export const reportTitle = (content: ReportContent, words: Words): string =>
  words.say('report.title-of', {
    titleName: words.say(`report.title.${content.kind}`),
    name: reportName(content, words),
  });

/**
 * Draws a report.
 * @param words of the person who gets it: the same words, the same pages, on screen and in the PDF
 * @returns     one page or more; `shapedPages` has their letters of scripts that the fonts do not have
 */
export function drawReport(content: ReportContent, paper: Paper, words: Words): DrawnPage[] {
  const { say } = words;
  const flow = createFlow(paper, {
    text: say('report.footer', { name: reportTitle(content, words), printedAt: content.printedAt }),
    pageText: (page, pages) => say('report.page', { page, pages }),
  });
  fill(content, flow, words);
  return flow.pages();
}

function fill(content: ReportContent, flow: Flow, words: Words): void {
  switch (content.kind) {
    case 'passport':
      passport(content, flow, words);
      break;
    case 'buyer':
      buyerSheet(content, flow, words);
      break;
    case 'buyer-list':
      buyerList(content, flow, words);
      break;
    case 'stack':
      stackReport(content, flow, words);
      break;
    case 'list':
      stackList(content, flow, words);
      break;
  }
}
