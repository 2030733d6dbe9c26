/**
 * The thread that copies, checks and looks into yard files, so that no reading waits for it. Run it with
 * `node:worker_threads`; it is built as `out/main/backup-worker.js`.
 */
import { parentPort } from 'node:worker_threads';
import '../../store/load-sqlite.ts';
import { answerQuestions } from '../own-thread.ts';
import { doBackupTask } from './backup-tasks.ts';

answerQuestions(parentPort, doBackupTask);
