import { DAY_MS, MONTH_DAYS } from '../../shared-core/time.ts';

/** Maps values onto a length of the drawing. */
export interface Scale {
  from: number;
  to: number;
  at: (value: number) => number;
}

/** A straight scale; `start` may lie beyond `end`, as it does for a vertical axis. */
export function linearScale(from: number, to: number, start: number, end: number): Scale {
  const span = to - from || 1;
  return { from, to, at: (value) => start + ((value - from) / span) * (end - start) };
}

/** Steps that people count in: 1, 2 or 5 times a power of ten, at most `most` of them over the span. */
export function niceStep(span: number, most: number): number {
  const rough = span / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((factor) => factor * power >= rough - 1e-9 * power) ?? 10;
  return step * power;
}

/** Round values on or around `low` to `high`, outermost included: the whole axis with its ticks. */
export function niceTicks(low: number, high: number, most: number): number[] {
  const step = niceStep(Math.max(high - low, 1), most);
  const first = Math.floor(low / step + 1e-9);
  const last = Math.ceil(high / step - 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
}

const DAY_STEPS = [1, 2, 7, 14];
const MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60, 120];

/** Local midnights that split a time span into at most `most` parts: by days, weeks, months or years. */
export function timeTicks(fromMs: number, toMs: number, most: number): number[] {
  const days = (toMs - fromMs) / DAY_MS;
  const dayStep = DAY_STEPS.find((step) => days / step <= most);
  const start = new Date(fromMs);
  const ticks: number[] = [];
  const keep = (date: Date) => {
    if (date.getTime() >= fromMs && date.getTime() <= toMs) ticks.push(date.getTime());
    return date.getTime() <= toMs;
  };
  if (dayStep !== undefined) {
    for (let day = 0; ; day += dayStep) {
      if (!keep(new Date(start.getFullYear(), start.getMonth(), start.getDate() + day))) return ticks;
    }
  }
  const monthStep = MONTH_STEPS.find((step) => days / MONTH_DAYS / step <= most) ?? MONTH_STEPS.at(-1)!;
  const firstMonth = monthStep >= 12 ? 0 : Math.floor(start.getMonth() / monthStep) * monthStep;
  for (let month = firstMonth; ; month += monthStep) {
    if (!keep(new Date(start.getFullYear(), month, 1))) return ticks;
  }
}
