import type { Corrected } from '../../../shared-core/wood/moisture/corrected.ts';
import { createPaced } from '../../paced.ts';
import type { AppContext } from '../context.ts';
import type { LiveValue } from './live-values.ts';
import type { MeterDesk } from './meter-desk.ts';

/**
 * Tells the window that holds the meter what it shows: at once, and what comes faster than it can be drawn as the newest
 * value with the trace of all. One that has just settled is always told.
 * @param correct corrects the value for the board that the window aims at; null where it aims at none
 */
export function createLiveTelling(
  context: AppContext,
  { values, holder }: MeterDesk,
  correct: (live: LiveValue, window: string) => Corrected | null,
) {
  function tell(): void {
    const live = values.newest();
    const window = holder.window();
    const trace = values.takeTrace();
    if (live === null || window === null) return;
    const { value, unit, phase, spread, tempC } = live;
    const corrected = value === null ? null : correct(live, window);
    const silentS = values.silentS();
    context.emitTo(window, 'meter.live', {
      raw: value,
      unit,
      corrected,
      phase,
      spread,
      tempC,
      silentS,
      trace,
    });
  }
  let isFailing = false;
  /** What cannot be shown, as where the file is gone, is saved or refused all the same. A meter does not fill the log with it. */
  const telling = createPaced(() => {
    try {
      tell();
      isFailing = false;
    } catch (error) {
      if (!isFailing) context.reportFault(error);
      isFailing = true;
    }
  });
  values.values.follow(({ settledNow }) => (settledNow ? telling.now() : telling.soon()));
  values.lost.follow(telling.now);
  values.silenced.follow(telling.now);

  return { close: telling.stop };
}
