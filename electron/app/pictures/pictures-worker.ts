/**
 * The thread that checks, saves and reads pictures. Run it with `node:worker_threads`; it is built as
 * `out/main/pictures-worker.js`.
 */
import { parentPort } from 'node:worker_threads';
import { answerQuestions } from '../own-thread.ts';
import { doPictureTask } from './picture-tasks.ts';

answerQuestions(parentPort, doPictureTask);
