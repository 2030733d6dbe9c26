import { useEffect } from 'react';

/** Others bring the focus back sooner: a dialog that closes, a round. */
const SETTLED_MS = 100;
const controls = [
  'a[href]',
  'button:enabled',
  'input:enabled',
  'select:enabled',
  'textarea:enabled',
  'summary',
  '[tabindex="0"]',
].join();

const isLost = (): boolean => document.activeElement === document.body || document.activeElement === null;

/**
 * Where a control is gone once it was used, the focus goes to the nearest one that is left, and not to the page. A
 * control that was off for a moment has it again.
 */
export function useFocusKept(): void {
  useEffect(() => {
    /** What had the focus last, and what it is in, from the inside out. */
    let path: HTMLElement[] = [];
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const onFocus = ({ target }: FocusEvent) => {
      path = [];
      for (let each = target as HTMLElement | null; each; each = each.parentElement) path.push(each);
    };
    const forget = () => {
      path = [];
    };
    const bringBack = () => {
      const last = path[0];
      if (!last || !isLost()) return;
      if (last.isConnected) return last.matches(':enabled') ? last.focus() : undefined;
      const left = path.find((each) => each.isConnected && each !== document.body);
      const near = left?.closest('main') === left ? null : left?.querySelector<HTMLElement>(controls);
      (near ?? document.querySelector('h1'))?.focus();
    };
    const observer = new MutationObserver(() => {
      if (!isLost() || path.length === 0) return;
      clearTimeout(waiting);
      waiting = setTimeout(bringBack, SETTLED_MS);
    });
    observer.observe(document.body, { childList: true, subtree: true, attributeFilter: ['disabled'] });
    addEventListener('focusin', onFocus);
    addEventListener('pointerdown', forget);
    return () => {
      clearTimeout(waiting);
      observer.disconnect();
      removeEventListener('focusin', onFocus);
      removeEventListener('pointerdown', forget);
    };
  }, []);
}
