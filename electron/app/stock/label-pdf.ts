import type { UnderWay } from '../long-work.ts';
import { createOwnThread, type OwnThread } from '../own-thread.ts';
import type { LabelsToPrint } from './labels-worker.ts';

type LabelThread = OwnThread<LabelsToPrint, Uint8Array>;

/**
 * Makes PDFs, each on its own thread, so that stopping one ends it at once and no other.
 * @param script  what the thread runs
 */
export function createLabelPdf(script: string) {
  /** A thread that was used before need not be started. */
  let idle: LabelThread | null = null;

  return async (labels: LabelsToPrint, { tell, signal }: UnderWay): Promise<Uint8Array> => {
    const thread = idle ?? createOwnThread<LabelsToPrint, Uint8Array>(script);
    idle = null;
    const stop = () => void thread.close();
    signal.addEventListener('abort', stop);
    try {
      const pdf = await thread.ask(labels, tell);
      if (idle === null) idle = thread;
      else stop();
      return pdf;
    } catch (error) {
      stop();
      throw error;
    } finally {
      signal.removeEventListener('abort', stop);
    }
  };
}
export type LabelPdf = ReturnType<typeof createLabelPdf>;
