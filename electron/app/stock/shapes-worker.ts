/** Shapes texts for the preview on a thread: reading a font takes longer than a reading may wait. */
import { parentPort } from 'node:worker_threads';
import { createShaper } from '../../print/shape-text.ts';
import { answerQuestions } from '../own-thread.ts';

const shape = createShaper();

answerQuestions(parentPort, (texts: readonly string[]) => shape(texts));
