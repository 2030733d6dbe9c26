/** Reads a person's tables and checks them on a thread, so that nothing waits for 100,000 rows. */
import { parentPort } from 'node:worker_threads';
import '../../store/load-sqlite.ts';
import { answerQuestions } from '../own-thread.ts';
import { createImportTasks } from './import-tasks.ts';

answerQuestions(parentPort, createImportTasks());
