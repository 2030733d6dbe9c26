import { createSignal } from '../signal.ts';
import type { Windows } from '../windows.ts';

/** Which window the meter's values go to: one, by a press there, or none. */
export function createMeterHolder({ closed }: Pick<Windows, 'closed'>) {
  let holder: string | null = null;
  const changed = createSignal();

  function hold(window: string | null): void {
    if (holder === window) return;
    holder = window;
    changed.give();
  }
  closed.follow((window) => {
    if (holder === window) hold(null);
  });

  return {
    changed,
    window: (): string | null => holder,
    hold,
    holdIfFree: (window: string): void => {
      if (holder === null) hold(window);
    },
  };
}
export type MeterHolder = ReturnType<typeof createMeterHolder>;
