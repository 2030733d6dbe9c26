import type { ShownNumber } from './shown-number.ts';
import type { StoredStretch } from './stretch.ts';

/** The shortest time that a person can read a value in, ms. Our judgment. */
const REST_MS = 400;
/** How far it may drift meanwhile, as a share of it. Our judgment. */
const NEAR_SHARE = 0.012;

/**
 * How well a layout agrees with a typed number, bits: 0 where it shows nothing else at that time; null where it does not
 * show it.
 *
 * @param near    what it reads in the packets of the last moments before the number was typed
 * @param late    the same of some 20 s
 * @param factor  of what is stored, and `plus` is added, for what the display shows
 */
export function agreement(
  shown: ShownNumber,
  near: StoredStretch,
  late: () => StoredStretch,
  factor: number,
  plus: number,
): number | null {
  const now = shareShowing(near, shown, factor, plus);
  if (now > 0) return Math.max(-5, Math.log2(now));
  const before = shareShowing(late(), shown, factor, plus);
  return before > 0 ? Math.max(-6, Math.log2(before)) - 2 : null;
}

/**
 * Share of the time in which the display would show the number: 0 unless it does so while the value stays near it. What
 * comes by it for a moment, as noise does, is not what a person reads.
 */
function shareShowing(found: StoredStretch, shown: ShownNumber, factor: number, plus: number): number {
  const nearness = Math.max(1.5 * shown.resolution, NEAR_SHARE * Math.abs(shown.value));
  let showing = 0;
  let all = 0;
  let runMs = 0;
  let isShownInRun = false;
  let hasRested = false;
  for (const { stored, ms } of found) {
    all += ms;
    const value = stored === null ? null : stored * factor + plus;
    if (value === null || Math.abs(value - shown.value) > nearness) {
      runMs = 0;
      isShownInRun = false;
      continue;
    }
    runMs += ms;
    const close = closeness(value, shown);
    showing += ms * close;
    isShownInRun ||= close > 0;
    hasRested ||= isShownInRun && runMs >= REST_MS;
  }
  return hasRested ? showing / all : 0;
}

/** 1 where the display would show it so, less where it would cut it off instead of rounding it. */
function closeness(value: number, { value: shown, resolution }: ShownNumber): number {
  // Else 13.5 would be cut off to 13.4, as (13.5 - 13.4) / 0.1 is 0.9999999999999964.
  const off = Math.round(((value - shown) / resolution) * 1e6) / 1e6;
  if (Math.abs(off) <= 0.5) return 1;
  return Math.floor(off) === 0 ? 0.4 : 0;
}
