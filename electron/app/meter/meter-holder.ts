import { createSignal } from '../signal.ts';
import type { Windows } from '../windows.ts';

/** Which window the meter's values go to: one, by a press there, or none. */
export function createMeterHolder({ opened, closed }: Pick<Windows, 'opened' | 'closed'>) {
  let holder: string | null = null;
  /** The one that was gone while it held the meter. It gets it back when it connects again, if no other has it. */
  let gone: string | null = null;
  const changed = createSignal();

  function hold(window: string | null): void {
    if (holder === window) return;
    holder = window;
    gone = null;
    changed.give();
  }
  closed.follow((window) => {
    if (holder !== window) return;
    hold(null);
    gone = window;
  });
  opened.follow((window) => {
    if (gone === window) hold(window);
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
