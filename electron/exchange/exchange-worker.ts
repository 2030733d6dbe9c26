/**
 * The thread that writes and reads files of a yard, so that no reading waits for 100,000 others. Run it with
 * `node:worker_threads`; it is built as `out/main/exchange-worker.js`.
 */
import { parentPort } from 'node:worker_threads';
import '../store/load-sqlite.ts';
import { answerQuestions } from '../app/own-thread.ts';
import { doExchangeTask } from './exchange-tasks.ts';

answerQuestions(parentPort, doExchangeTask);
