import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import type { Layout } from './layout.ts';
import { isInteger, type PossibleLayout } from './possible-layouts.ts';
import { fitScales, type StoredAndShown } from './scale-fit.ts';
import { differentNumbers, type ShownNumber } from './shown-number.ts';
import type { StoredStretch } from './stretch.ts';
import { formatTakesExponent, representableRange } from './value.ts';

/** Powers of ten of the number on a display. */
const EXPONENTS = { pct: [-1, -2, 0, -3, 1, 2], ohm: [0, 3, 6, 9, 5, 4, 2, 1, -1, -2, -3, 7, 8] } as const;
/** Every pin meter shows at least this MC, %. Common practice, no source. */
const LEAST_MOST_PCT = 45;

/** A layout with a scale: what it stores × `factor` + `plus` is on the display. */
interface Scaled {
  layout: Layout;
  /** How unlikely it is beforehand, bits. */
  cost: number;
  factor: number;
  plus: number;
  /** Typed numbers that the scale was made from. */
  fitted: number;
}

type Scaling = (
  possible: PossibleLayout,
  finds: readonly StoredStretch[],
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
) => Scaled[];

/** The scales to try for a layout, given what it finds at each typed number. */
export const scaledLayouts: Scaling = (...given) => [...powersOfTen(...given), ...simpleScales(...given)];

const powersOfTen: Scaling = ({ layout, cost }, _, shown, unit) =>
  EXPONENTS[unit].map((exponent) => {
    const factor = Number(`1e${exponent}`);
    const takesNone = layout.kind === 'number' && !formatTakesExponent(layout.format);
    const scaled = takesNone ? { ...layout, scale: factor } : { ...layout, exponent };
    return {
      layout: scaled,
      cost: cost + costOfPower(layout, exponent, shown, unit) + costOfRange(scaled, unit),
      factor,
      plus: 0,
      fitted: 0,
    };
  });

/** Of a layout that cannot hold the MC of wet wood, bits. */
function costOfRange(layout: Layout, unit: ReadingUnit): number {
  const holds = representableRange(layout);
  return unit === 'pct' && holds !== null && holds.max < LEAST_MOST_PCT ? 4 : 0;
}

/** Whole numbers usually count what the display's last digit counts, or a tenth of it; others are the number itself. */
function costOfPower(
  layout: Layout,
  exponent: number,
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
): number {
  if (!isInteger(layout)) return exponent === 0 ? -2 : 2;
  const finest = Math.round(Math.log10(Math.min(...shown.map(({ resolution }) => resolution))));
  const finer = finest - exponent;
  return finer >= 0 ? 0.4 * finer : unit === 'ohm' ? 1.5 : 3.5;
}

/** Where whole numbers count in steps of something else. */
const simpleScales: Scaling = ({ layout, cost }, finds, shown, unit) => {
  if (layout.kind !== 'number' || !isInteger(layout) || differentNumbers(shown) < 2) return [];
  const fits = new Map<string, Scaled>();
  for (const middleOf of [restedAt, commonest, medianOf]) {
    const middles = finds.map(middleOf);
    if (middles.some((middle) => middle === null)) return [];
    const points = middles.map((middle, at) => ({ ...shown[at]!, stored: middle! }));
    for (const { scale, offset, cost: ofFit } of [...fitScales(points), ...fitScales(flickering(points))]) {
      const scaled = { ...layout, scale, offset };
      fits.set(`${scale} ${offset}`, {
        layout: scaled,
        cost: cost + ofFit + costOfRange(scaled, unit),
        factor: scale,
        plus: offset,
        fitted: offset === 0 ? 1 : 2,
      });
    }
  }
  return [...fits.values()];
};

/** With room for a last bit that was another one when the number was read. */
function flickering(points: readonly StoredAndShown[]): StoredAndShown[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  const step = Math.abs((last.value - first.value) / (last.stored - first.stored || 1));
  return points.map((point) => ({ ...point, resolution: point.resolution + 2 * step }));
}

function medianOf(found: StoredStretch): number | null {
  const known = found.flatMap(({ stored }) => (stored === null ? [] : [stored])).toSorted((a, b) => a - b);
  return known[known.length >> 1] ?? null;
}

/** In the middle of the time, when the value has settled and the pins are still in. */
const restedAt = (found: StoredStretch): number | null =>
  medianOf(found.slice(Math.floor(found.length * 0.4), Math.ceil(found.length * 0.8)));

function commonest(found: StoredStretch): number | null {
  const times = new Map<number, number>();
  for (const { stored, ms } of found) {
    if (stored !== null) times.set(stored, (times.get(stored) ?? 0) + ms);
  }
  const longestFirst = [...times].toSorted((a, b) => b[1] - a[1]).map(([stored]) => stored);
  return longestFirst[0] ?? null;
}
