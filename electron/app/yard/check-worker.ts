/**
 * The thread that looks through a yard file: for 100,000 boards that takes seconds, and the window must not wait
 * for it. Run it with `node:worker_threads`; it is built as `out/main/check-worker.js`.
 */
import { parentPort } from 'node:worker_threads';
import '../../store/load-sqlite.ts';
import { damagedReadings } from '../../store/damaged-readings.ts';
import { damageIn } from '../../store/yard-file.ts';
import { answerQuestions } from '../own-thread.ts';
import type { Checked, CheckQuestion } from './check-thread.ts';

answerQuestions(parentPort, ({ file, isThorough }: CheckQuestion): Checked => {
  const damage = damageIn(file, isThorough);
  return { damage, damagedReadings: isThorough && damage === null ? damagedReadings(file) : [] };
});
