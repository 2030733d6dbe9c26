import { DAY_MS } from '../../shared-core/time.ts';
import type { Formats } from '../../shared-core/words/formats.ts';
import { plotMargin, type Tick } from './Axes.tsx';
import { linearScale, type Scale, timeTicks } from './scale.ts';

/** Beyond this span a day's name says less than its month. */
const LONG_DAYS = 400;
/** The room that one label takes, px. */
const LABEL_PX = 110;
/** What took less time than this is drawn over as much. */
const SHORTEST_DAYS = 4;
/** The room on either side of the first and the last instant, as a share of the time between them. */
const BESIDE = 0.04;

/** Instants over the width of a plot, with room beside them. */
export function timeScale(instantsMs: readonly number[], width: number): Scale {
  const from = Math.min(...instantsMs);
  const spanMs = Math.max(Math.max(...instantsMs) - from, SHORTEST_DAYS * DAY_MS);
  return linearScale(
    from - BESIDE * spanMs,
    from + (1 + BESIDE) * spanMs,
    plotMargin.left,
    width - plotMargin.right,
  );
}

/** The days or months along a time axis, as many as have room. */
export function timeAxisTicks(x: Scale, width: number, formats: Formats): Tick[] {
  const label = x.to - x.from > LONG_DAYS * DAY_MS ? formats.monthOfYear : formats.day;
  return timeTicks(x.from, x.to, Math.max(2, Math.floor(width / LABEL_PX))).map((at) => ({
    at,
    label: label(new Date(at).toISOString()),
  }));
}
