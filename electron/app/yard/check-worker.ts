/**
 * The thread that looks through a large yard file: for 100,000 boards that takes seconds, and the window must not wait
 * for it. Run it with `node:worker_threads`; it is built as `out/main/check-worker.js`.
 */
import { parentPort } from 'node:worker_threads';
import { damageIn } from '../../store/yard-file.ts';
import { answerQuestions } from '../own-thread.ts';

answerQuestions(parentPort, (file: string) => damageIn(file));
