import type { Value } from './description.ts';
import type { Layout } from './layout.ts';

type Scales = Pick<Layout, 'x' | 'y'>;

const px = (value: number): string => value.toFixed(1);

/** An SVG path from value to value. */
export const curvePath = (values: readonly Value[], { x, y }: Scales): string =>
  values.map((value, index) => `${index ? 'L' : 'M'}${px(x.at(value.x))} ${px(y.at(value.y))}`).join('');

/** An SVG path around the values that have an interval: along the high ends, and back along the low ones. */
export function bandPath(values: readonly Value[], { x, y }: Scales): string {
  const ends = values.flatMap(({ x: at, low, high }) =>
    low === undefined || high === undefined
      ? []
      : [{ at: px(x.at(at)), low: px(y.at(low)), high: px(y.at(high)) }],
  );
  const corners = [
    ...ends.map(({ at, high }) => `${at} ${high}`),
    ...ends.map(({ at, low }) => `${at} ${low}`).reverse(),
  ];
  return corners.length > 0 ? `M${corners.join('L')}Z` : '';
}
