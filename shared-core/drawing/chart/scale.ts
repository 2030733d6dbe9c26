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
