import type { ChartDescription, Layer, Value } from './description.ts';

/** The layers that have something to show between the ends of the x axis, with that part of their values. */
export function shownLayers({ x, layers }: Pick<ChartDescription, 'x' | 'layers'>): Layer[] {
  const isShown = (at: number) => at >= x.from && at <= x.to;
  return layers.flatMap((layer): Layer[] => {
    if (layer.kind === 'level' || layer.kind === 'target') return [layer];
    if (layer.kind === 'interval') {
      return layer.from <= x.to && (layer.to ?? x.to) >= x.from ? [layer] : [];
    }
    const values =
      layer.kind === 'line'
        ? lineBetween(layer.values, x.from, x.to)
        : layer.values.filter((value) => isShown(value.x));
    return values.length > 0 ? [{ ...layer, values } as Layer] : [];
  });
}

/** Part of a line, cut off at its ends. */
function lineBetween(values: readonly Value[], from: number, to: number): Value[] {
  const ends = [from, to].map((x) => valueAt(values, x));
  const inside = values.filter(({ x }) => x > from && x < to);
  return [ends[0], ...inside, ends[1]].filter((value) => value !== undefined);
}

/** A line's value at an x, straight between its values; undefined beyond them. */
export function valueAt(values: readonly Value[], x: number): Value | undefined {
  const next = values.findIndex((value) => value.x >= x);
  const [before, after] = [values[next - 1], values[next]];
  if (!after || after.x === x) return after;
  if (!before) return undefined;
  const share = (x - before.x) / (after.x - before.x);
  const between = (a?: number, b?: number) =>
    a === undefined || b === undefined ? undefined : a + share * (b - a);
  return {
    x,
    y: before.y + share * (after.y - before.y),
    low: between(before.low, after.low),
    high: between(before.high, after.high),
  };
}
