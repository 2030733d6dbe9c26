import { useState } from 'react';
import { sentenceOf } from '../stores/notices.ts';

/**
 * What a dialog does when it saves: it is busy until the machine answers, closes when that went well, and otherwise
 * stays open with the reason.
 */
export function useSaving(onClose: () => void) {
  const [busy, setBusy] = useState(false);
  /** A new object for each failure, so that the same sentence again is news. */
  const [problem, setProblem] = useState<{ sentence: string } | null>(null);

  async function save(work: () => Promise<unknown>): Promise<void> {
    if (busy) return;
    setBusy(true);
    setProblem(null);
    try {
      await work();
      onClose();
    } catch (error) {
      setProblem({ sentence: sentenceOf(error) });
    } finally {
      setBusy(false);
    }
  }
  return { busy, problem, save, forgetProblem: () => setProblem(null) };
}
