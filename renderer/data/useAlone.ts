import { useEffect, useRef, useState } from 'react';

/**
 * Lets one window at a time have what it saves in this browser for itself. The next one has it once the first leaves it, or
 * takes it.
 *
 * @param name  of what it has
 * @returns whether this window has it; null until that is known
 */
export function useAlone(name: string): { isAlone: boolean | null; take: () => void } {
  const [isAlone, setAlone] = useState<boolean | null>(null);
  const take = useRef(() => {});
  useEffect(() => {
    let asked = new AbortController();
    let leave = () => {};
    const have = () =>
      new Promise<void>((resolve) => {
        leave = resolve;
        setAlone(true);
      });
    /** It ends in an error where it is no longer waited for, and where another window takes it. */
    function ask(isTaken: boolean): void {
      asked = new AbortController();
      const { signal } = asked;
      const options: LockOptions = isTaken ? { steal: true } : { signal };
      navigator.locks.request(name, options, have).catch(() => {
        if (signal.aborted) return;
        setAlone(false);
        ask(false);
      });
    }
    take.current = () => {
      asked.abort();
      ask(true);
    };
    navigator.locks.query().then(({ held = [] }) => {
      if (!asked.signal.aborted && held.some((lock) => lock.name === name)) setAlone((now) => now ?? false);
    });
    ask(false);
    return () => {
      asked.abort();
      leave();
    };
  }, [name]);
  return { isAlone, take: () => take.current() };
}
