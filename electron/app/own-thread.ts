import { type MessagePort, Worker } from 'node:worker_threads';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';

/** Told by a thread of how much it has done. */
type Tell = (done: number, total: number) => void;

interface Waiting<Answer> {
  tell: Tell;
  resolve: (answer: Answer) => void;
  reject: (error: Error) => void;
}

interface Asked<Question> {
  id: number;
  question: Question;
}
type Reply<Answer> =
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
  let nextId = 1;
  const waiting = new Map<number, Waiting<Answer>>();

  function start(): Worker {
    const started = new Worker(script);
    started.unref();
    started.on('message', (reply: Reply<Answer>) => {
      const asker = waiting.get(reply.id);
      if ('done' in reply) {
        asker?.tell(reply.done, reply.total);
        return;
      }
      waiting.delete(reply.id);
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
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  }

  return {
    ask: (question: Question, tell: Tell = () => undefined): Promise<Answer> => {
      worker ??= start();
      const id = nextId++;
      return new Promise((resolve, reject) => {
        waiting.set(id, { tell, resolve, reject });
        worker?.postMessage({ id, question } satisfies Asked<Question>);
      });
    },
    close: async (): Promise<void> => {
      const ending = worker;
      worker = null;
      refuseAll(new Refusal(message('refusal.closing')));
      await ending?.terminate();
    },
  };
}
export type OwnThread<Question, Answer> = ReturnType<typeof createOwnThread<Question, Answer>>;

/** The thread's side: answers every question that is asked of it; one that throws fails alone. */
export function answerQuestions<Question, Answer>(
  port: MessagePort | null,
  answer: (question: Question, tell: Tell) => Answer | Promise<Answer>,
): void {
  port?.on('message', async ({ id, question }: Asked<Question>) => {
    let reply: Reply<Answer>;
    try {
      const tell: Tell = (done, total) => port.postMessage({ id, done, total });
      reply = { id, answer: await answer(question, tell) };
    } catch (error) {
      reply = { id, fault: error instanceof Error ? error.message : String(error) };
    }
    port.postMessage(reply);
  });
}
