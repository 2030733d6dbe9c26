/** Draws labels and writes them as a PDF on a thread, so that no reading waits while 2,000 are made. */
import { parentPort } from 'node:worker_threads';
import { calibrationPage } from '../../../shared-core/labels/calibration-page.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import type { LabelPaper } from '../../../shared-core/labels/paper.ts';
import type { Display } from '../../../shared-core/words/formats.ts';
import { catalogFor } from '../../../shared-core/words/languages.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { pdfOf } from '../../print/pdf.ts';
import { createShaper } from '../../print/shape-text.ts';
import { answerQuestions } from '../own-thread.ts';

/** Labels of boards; of no contents, the page that their paper is calibrated by. */
export interface LabelsToPrint {
  contents: readonly LabelContent[] | null;
  paper: LabelPaper;
  used: number;
  display: Display;
  createdAt: Date;
}

const shape = createShaper();

answerQuestions(
  parentPort,
  async ({ contents, paper, used, display, createdAt }: LabelsToPrint, tell): Promise<Uint8Array> => {
    const words = createWords({ catalog: await catalogFor(display.locale), ...display });
    const meta = { title: words.say('labels.pdf-title'), locale: display.locale, createdAt };
    const pages = contents
      ? drawLabels(contents, paper, words, used, 'printer', shape)
      : [calibrationPage(paper.layout, words)];
    return pdfOf(pages, meta, tell);
  },
);
