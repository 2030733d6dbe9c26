import { setPriority } from 'node:os';
import { type MessagePort, Worker } from 'node:worker_threads';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { createTurns } from './turns.ts';

/** Told by a thread of how much it has done. */
type Tell = (done: number, total: number) => void;

/** A thread did not answer in time: the disk or network drive that it waits for does not. */
export class NoAnswer extends Error {
  override name = 'NoAnswer';
  /** When the thread is done with it after all. */
  readonly ended: Promise<unknown>;
  constructor(ended: Promise<unknown>) {
    super('no-answer');
    this.ended = ended;
  }
}

/** Threads that were given up while a call to the system blocks them. */
const stuck = new Set<Worker>();

/** Whether a call to the system still blocks a given-up thread, which an ordinary exit would wait for. */
export const hasStuckThread = (): boolean => stuck.size > 0;

/** Longer than this nobody waits for a thread at the end. */
const END_MS = 2000;

interface Waiting<Answer> {
  tell: Tell;
  resolve: (answer: Answer) => void;
  reject: (error: Error) => void;
  /** From when the thread began with it: gives the thread up. */
  limit: NodeJS.Timeout | undefined;
  limitMs: number | undefined;
}

interface Asked<Question> {
  id: number;
  question: Question;
}
type Reply<Answer> =
  /** Neither what a computer takes to load the thread nor what was asked before counts for a limit. */
  | { id: number; begun: true }
  | { id: number; answer: Answer }
  | { id: number; fault: string }
  | { id: number; done: number; total: number };

/**
 * Asks another thread, so that nothing else waits for what takes long to work out. The thread is started with the
 * first question, and again after it ended by a fault.
 *
 * @param script  what the thread runs, built, or in tests bare: it answers by `answerQuestions`
 */
export function createOwnThread<Question, Answer>(script: string) {
  let worker: Worker | null = null;
  /** Settled once the thread has loaded, or failed to. */
  let loaded: Promise<unknown> = Promise.resolve();
  let nextId = 1;
  const waiting = new Map<number, Waiting<Answer>>();

  function start(): Worker {
    const started = new Worker(script);
    loaded = new Promise<void>((resolve) => {
      for (const event of ['message', 'error', 'exit']) started.once(event, () => resolve());
    });
    started.on('message', (reply: Reply<Answer>) => {
      if (worker !== started) return;
      const asker = waiting.get(reply.id);
      if ('begun' in reply) {
        if (asker) asker.limit = limitOf(asker.limitMs);
        return;
      }
      if ('done' in reply) {
        asker?.limit?.refresh();
        asker?.tell(reply.done, reply.total);
        return;
      }
      waiting.delete(reply.id);
      // A thread that nobody waits for lets the program end. A listener added after this would undo it.
      if (waiting.size === 0) started.unref();
      clearTimeout(asker?.limit);
      if ('fault' in reply) asker?.reject(new Error(reply.fault));
      else asker?.resolve(reply.answer);
    });
    started.on('error', (error) => end(error as Error));
    started.on('exit', () => end(new Error('The thread ended before it answered.')));

    function end(error: Error): void {
      if (worker !== started) return;
      worker = null;
      refuseAll(error);
    }
    return started;
  }

  function refuseAll(error: Error): void {
    for (const { reject, limit } of waiting.values()) {
      clearTimeout(limit);
      reject(error);
    }
    waiting.clear();
  }

  const limitOf = (ms: number | undefined) => (ms === undefined ? undefined : setTimeout(giveUp, ms).unref());

  /** Another thread is started with the next question; nothing that this one would do after its wait is done. */
  function giveUp(): void {
    if (worker === null) return;
    const ended = letEnd(worker, loaded);
    worker = null;
    refuseAll(new NoAnswer(ended));
  }

  return {
    /** @param limitMs  after how long at this without a sign of life the thread is given up: `NoAnswer` */
    ask: (question: Question, tell: Tell = () => undefined, limitMs?: number): Promise<Answer> => {
      worker ??= start();
      const id = nextId++;
      return new Promise((resolve, reject) => {
        waiting.set(id, { tell, resolve, reject, limit: undefined, limitMs });
        worker?.ref();
        worker?.postMessage({ id, question } satisfies Asked<Question>);
      });
    },
    close: async (): Promise<void> => {
      const ending = worker;
      worker = null;
      refuseAll(new Refusal(message('refusal.closing')));
      if (ending !== null) await noLongerThan(END_MS, letEnd(ending, loaded));
    },
  };
}

/**
 * A thread that waits for the system ends when that answers; one that still loads, once it has: what is native of it would
 * end the whole program.
 */
function letEnd(worker: Worker, loaded: Promise<unknown>): Promise<unknown> {
  stuck.add(worker);
  return loaded.then(() => worker.terminate()).finally(() => stuck.delete(worker));
}

async function noLongerThan(ms: number, work: Promise<unknown>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise((resolve) => {
    timer = setTimeout(resolve, ms);
  });
  await Promise.race([work, late]);
  clearTimeout(timer);
}

export type OwnThread<Question, Answer> = ReturnType<typeof createOwnThread<Question, Answer>>;

/** Below everything that a person waits for at the next frame: what the meter shows, and what is saved. */
const NICENESS = 5;

/**
 * The thread's side: answers every question that is asked of it, one after the other, so that the limit of one never runs
 * out over another. One that throws fails alone.
 */
export function answerQuestions<Question, Answer>(
  port: MessagePort | null,
  answer: (question: Question, tell: Tell) => Answer | Promise<Answer>,
): void {
  if (port === null) return;
  // On Linux a thread has its own priority. Elsewhere this would be the whole program's.
  if (process.platform === 'linux') setPriority(0, NICENESS);
  const { inTurn } = createTurns();
  port.on('message', ({ id, question }: Asked<Question>) => inTurn(() => reply(port, id, question)));

  async function reply(to: MessagePort, id: number, question: Question): Promise<void> {
    const send = (what: Reply<Answer>): void => to.postMessage(what);
    send({ id, begun: true });
    try {
      send({ id, answer: await answer(question, (done, total) => send({ id, done, total })) });
    } catch (error) {
      send({ id, fault: error instanceof Error ? error.message : String(error) });
    }
  }
}
