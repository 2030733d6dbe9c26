import { useEffect, useRef, useState } from 'react';

/**
 * Counts down once for each occasion, and then acts; any key or press before that stops it.
 * @param occasion null where there is none, or not any more
 * @param seconds  0 for at once; null where nothing is to happen by itself
 * @returns the seconds left; null where it is not counting
 */
export function useCountdown(
  occasion: number | null,
  seconds: number | null,
  onEnd: () => void,
): number | null {
  const [left, setLeft] = useState(seconds);
  const [done, setDone] = useState<number | null>(null);
  const end = useRef(onEnd);
  useEffect(() => {
    end.current = onEnd;
  });
  const isCounting = occasion !== null && occasion !== done && seconds !== null;
  useEffect(() => {
    if (!isCounting) return;
    let now = seconds;
    const stop = () => setDone(occasion);
    if (now === 0) {
      stop();
      end.current();
      return;
    }
    const timer = setInterval(() => {
      now -= 1;
      setLeft(now);
      if (now > 0) return;
      stop();
      end.current();
    }, 1000);
    addEventListener('keydown', stop);
    addEventListener('pointerdown', stop);
    return () => {
      setLeft(seconds);
      clearInterval(timer);
      removeEventListener('keydown', stop);
      removeEventListener('pointerdown', stop);
    };
  }, [isCounting, occasion, seconds]);
  return isCounting && seconds !== 0 ? left : null;
}
