import type { Tick } from './Axes.tsx';
import { type Scale, timeTicks } from './scale.ts';

const DAY_MS = 86_400_000;
/** Beyond this span a day's name says less than its month. */
const LONG_DAYS = 400;
/** The room that one label wants, px. */
const LABEL_PX = 110;

/** The days or months along a time axis, as many as have room. */
export function timeAxisTicks(x: Scale, width: number): Tick[] {
  const format: Intl.DateTimeFormatOptions =
    x.to - x.from > LONG_DAYS * DAY_MS
      ? { month: 'short', year: 'numeric' }
      : { day: 'numeric', month: 'short' };
  return timeTicks(x.from, x.to, Math.max(2, Math.floor(width / LABEL_PX))).map((at) => ({
    at,
    label: new Date(at).toLocaleDateString('en-GB', format),
  }));
}
