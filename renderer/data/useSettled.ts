import { useState } from 'react';

/**
 * The newest value that was whole: while a newer one waits for a part of it, the one before stays. Without one before,
 * it is shown as it is.
 */
export function useSettled<T>(value: T, isWhole: boolean): T {
  const [settled, setSettled] = useState<{ value: T } | null>(null);
  if (isWhole && settled?.value !== value) setSettled({ value });
  return isWhole || settled === null ? value : settled.value;
}
