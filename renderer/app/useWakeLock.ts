import { useEffect, useState } from 'react';

/**
 * Keeps the screen on for as long as what asks for it is shown. A window out of sight loses it, and takes it again once
 * it is back.
 * @returns whether the system refuses, so that the screen may turn off
 */
export function useWakeLock(): boolean {
  const [isRefused, setRefused] = useState(false);
  useEffect(() => {
    let held: WakeLockSentinel | null = null;
    let isOver = false;
    const isSeen = () => !isOver && document.visibilityState === 'visible';
    async function take(): Promise<void> {
      if (!isSeen()) return;
      try {
        const lock = await navigator.wakeLock.request('screen');
        if (isOver) {
          await lock.release();
          return;
        }
        held = lock;
        // As where the battery is low.
        lock.addEventListener('release', () => isSeen() && setRefused(true));
        setRefused(false);
      } catch {
        // A browser without it has no `wakeLock` at all.
        if (isSeen()) setRefused(true);
      }
    }
    const onVisible = () => void take();
    onVisible();
    document.addEventListener('visibilitychange', onVisible);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', onVisible);
      void held?.release();
    };
  }, []);
  return isRefused;
}
