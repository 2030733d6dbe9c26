/**
 * The thread that holds a round's boards against each other: for a stack of 1,000 that takes a second or two, and the
 * window must not wait for it. Run it with `node:worker_threads`; it is built as `out/main/round-worker.js`.
 */
import { parentPort } from 'node:worker_threads';
import {
  type BoardOfRound,
  suspicionsOfRound,
} from '../../../shared-core/probing/calls/suspicions-of-round.ts';
import { answerQuestions } from '../own-thread.ts';

answerQuestions(parentPort, (boards: BoardOfRound[]) => suspicionsOfRound(boards));
