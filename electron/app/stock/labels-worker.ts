/** Draws labels and writes them as a PDF on a thread, so that no reading waits while 2,000 are made. */
import { parentPort } from 'node:worker_threads';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import type { LabelLayout } from '../../../shared-core/labels/sheet.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import type { Display } from '../../../shared-core/words/formats.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { pdfOf } from '../../print/pdf.ts';
import { answerQuestions } from '../own-thread.ts';

export interface LabelsToPrint {
  contents: readonly LabelContent[];
  layout: LabelLayout;
  used: number;
  display: Display;
  createdAt: Date;
}

answerQuestions(
  parentPort,
  ({ contents, layout, used, display, createdAt }: LabelsToPrint, tell): Promise<Uint8Array> => {
    const words = createWords({ catalog: english, ...display });
    const meta = { title: words.say('labels.pdf-title'), locale: display.locale, createdAt };
    return pdfOf(drawLabels(contents, layout, words, used), meta, tell);
  },
);
