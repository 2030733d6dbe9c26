import type { UnderWay } from './long-work.ts';
import { createOwnThread, type OwnThread } from './own-thread.ts';

/** A PDF, how it is called, and how large each of its pages is. */
export interface PdfFile {
  pdf: Uint8Array;
  fileName: string;
  widthMm: number;
  heightMm: number;
}

/** As a window gets it. */
export const toWindow = ({ pdf, fileName }: PdfFile) => ({
  pdfBase64: Buffer.from(pdf).toString('base64'),
  fileName,
});

/** Makes a PDF of something. */
export type MakePdf<Question> = (question: Question, underWay: UnderWay) => Promise<Uint8Array>;

/**
 * Makes PDFs, each on its own thread, so that stopping one ends it at once and no other.
 * @param script  what the thread runs
 */
export function createPdfThread<Question>(script: string): MakePdf<Question> {
  /** A thread that was used before need not be started. */
  let idle: OwnThread<Question, Uint8Array> | null = null;

  return async (question, { tell, signal }) => {
    const thread = idle ?? createOwnThread<Question, Uint8Array>(script);
    idle = null;
    const stop = () => void thread.close();
    signal.addEventListener('abort', stop);
    try {
      const pdf = await thread.ask(question, tell);
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
