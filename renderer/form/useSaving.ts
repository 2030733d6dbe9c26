import { useEffect, useRef, useState } from 'react';
import { sentenceOf } from '../stores/notices.ts';

/**
 * What a form does when it saves: it is busy until the machine answers, closes when that went well, and otherwise stays
 * open with the reason, the focus in the first field of `form` that is marked wrong or was saved otherwise meanwhile; else the reason, which is `answer`, is
 * scrolled into sight.
 */
export function useSaving(onClose: () => void) {
  const [busy, setBusy] = useState(false);
  /** A new object for each failure, so that the same sentence again is news. */
  const [problem, setProblem] = useState<{ sentence: string } | null>(null);
  const form = useRef<HTMLFormElement>(null);
  const answer = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!problem) return;
    const wrong =
      form.current?.querySelector<HTMLElement>('[aria-invalid="true"]') ??
      form.current
        ?.querySelector('.field-saved')
        ?.closest('.field')
        ?.querySelector<HTMLElement>('input, select, textarea, [tabindex]');
    if (wrong) wrong.focus();
    else {
      answer.current?.scrollIntoView?.({ block: 'nearest' });
      // The button that stopped it had the focus, and is gone.
      const hasNoFocus = document.activeElement?.contains(form.current) ?? true;
      if (hasNoFocus)
        form.current?.querySelector<HTMLElement>('[type=submit]')?.focus({ preventScroll: true });
    }
  }, [problem]);

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
  return {
    busy,
    problem,
    save,
    form,
    answer,
    tell: (sentence: string) => setProblem({ sentence }),
    forgetProblem: () => setProblem(null),
  };
}
