/**
 * The thread that saves what can be read of a damaged yard file: for 800,000 readings that takes a minute. Run it with
 * `node:worker_threads`; it is built as `out/main/salvage-worker.js`.
 */
import { parentPort } from 'node:worker_threads';
import '../../store/load-sqlite.ts';
import { salvage } from '../../store/salvage/salvage.ts';
import { answerQuestions } from '../own-thread.ts';

answerQuestions(parentPort, ({ file, target }: { file: string; target: string }) => salvage(file, target));
