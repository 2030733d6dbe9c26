import type { Corrected } from '../../../shared-core/wood/moisture/corrected.ts';
import type { AppContext } from '../context.ts';
import type { LiveValue } from './live-values.ts';
import type { MeterDesk } from './meter-desk.ts';

/** Live values reach the window at most this often, whatever the meter's rate. */
const LIVE_EVERY_MS = 50;

/**
 * Tells the window that holds the meter what it shows.
 * @param correct corrects the value for the board that the window aims at; null where it aims at none
 */
export function createLiveTelling(
  context: AppContext,
  { values, holder }: MeterDesk,
  correct: (live: LiveValue, window: string) => Corrected | null,
) {
  let timer: NodeJS.Timeout | null = null;

  function tell(): void {
    timer = null;
    const live = values.newest();
    const window = holder.window();
    const trace = values.takeTrace();
    if (live === null || window === null) return;
    const { value, unit, phase, spread } = live;
    const corrected = value === null ? null : correct(live, window);
    context.emitTo(window, 'meter.live', { raw: value, unit, corrected, phase, spread, trace });
  }
  values.values.follow(() => {
    timer ??= setTimeout(tell, LIVE_EVERY_MS);
  });
  values.lost.follow(tell);

  return {
    close: (): void => {
      if (timer !== null) clearTimeout(timer);
    },
  };
}
