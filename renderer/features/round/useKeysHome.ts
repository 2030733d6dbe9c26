import { type RefObject, useEffect } from 'react';
import { isDialogOpen } from '../../stores/dialogs.ts';

const RETURNED_MS = 50;

/**
 * Keeps the focus where the hands are: in the value field where one is typed in, else on the round. It comes back
 * there once a dialog is closed, once what had it is gone, and after a press by mouse or finger.
 */
export function useKeysHome(
  region: RefObject<HTMLElement | null>,
  field: RefObject<HTMLInputElement | null>,
): void {
  useEffect(() => {
    const bringHome = () => (field.current ?? region.current)?.focus();
    let hadDialog = false;
    let returning: ReturnType<typeof setTimeout> | undefined;
    const bringHomeUnlessAsked = () => {
      if (!isDialogOpen()) bringHome();
    };
    const look = () => {
      const hasDialog = isDialogOpen();
      const isLost = document.activeElement === document.body || document.activeElement === null;
      if (hadDialog || isLost) bringHomeUnlessAsked();
      // A dialog gives the focus back to its button, some time after it is gone.
      if (hadDialog && !hasDialog) returning = setTimeout(bringHomeUnlessAsked, RETURNED_MS);
      hadDialog = hasDialog;
    };
    const observer = new MutationObserver(look);
    observer.observe(document.body, { childList: true, subtree: true });
    const onClick = ({ detail }: MouseEvent) => {
      if (detail > 0) queueMicrotask(bringHomeUnlessAsked);
    };
    const element = region.current;
    element?.addEventListener('click', onClick);
    bringHome();
    return () => {
      observer.disconnect();
      clearTimeout(returning);
      element?.removeEventListener('click', onClick);
    };
  }, [field, region]);
}
