import { useEffect } from 'react';

/** Others bring the focus back sooner: a dialog or a menu whose button is still there, a round. */
const SETTLED_MS = 100;
const controls = 'a[href],summary,[tabindex="0"],:is(button,input,select,textarea):enabled';

const isLost = (): boolean => document.activeElement === document.body || document.activeElement === null;

/**
 * Where a control is gone once it was used, the focus goes to the nearest one that is left, and not to the page: of a
 * dialog or a menu that is closed, to one near what opened it. A control that was off for a moment has it again.
 */
export function useFocusKept(): void {
  useEffect(() => {
    /** What had the focus last, and what it is in, from the inside out; then the same of what is under that layer. */
    let path: HTMLElement[] = [];
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const onFocus = ({ target }: FocusEvent) => {
      const own: HTMLElement[] = [];
      let each = target as HTMLElement | null;
      for (; each && each !== document.body; each = each.parentElement) own.push(each);
      path = [...own, ...path.filter((each) => each.isConnected && !own.at(-1)?.contains(each))];
    };
    /** A press beside all controls is meant; one in a dialog leaves what is under it. */
    const forget = ({ target }: PointerEvent) => {
      if (path.at(-1)?.contains(target as Node)) path = [];
    };
    const bringBack = () => {
      const last = path[0];
      if (!last || !isLost()) return;
      if (last.isConnected) return last.matches(':enabled') ? last.focus() : undefined;
      const left = path.find((each) => each.isConnected);
      const isScreen = left?.matches('main') || left?.querySelector('main');
      const near = left?.matches(controls) ? left : left?.querySelector<HTMLElement>(controls);
      ((!isScreen && near) || document.querySelector('h1'))?.focus();
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
