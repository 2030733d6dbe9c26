import type { Layer, Value } from './description.ts';
import type { Layout } from './layout.ts';
import type { Box } from './place-words.ts';
import { valueAt } from './shown-layers.ts';

/** How far a curve is followed from one box to the next, px. */
const STEP_PX = 6;
/** Half the size of a point's mark, px. */
const MARK_PX = 7;

export type Plot = Pick<
  Layout,
  'x' | 'y' | 'left' | 'right' | 'top' | 'bottom' | 'laneY' | 'ruleTops' | 'aside'
>;

/** What a layer covers, so that words can be beside it: its curve, rules, line or points, but not a band. */
export function boxesOf(layer: Layer, plot: Plot): Box[] {
  const { x, y, left, right, top, bottom, ruleTops, aside } = plot;
  switch (layer.kind) {
    case 'line':
      return curveBoxes(layer.values, plot);
    case 'level': {
      const from = Math.max(left, x.at(layer.from ?? x.from));
      return [{ left: from, right, top: y.at(layer.y) - 1, bottom: y.at(layer.y) + 1 }];
    }
    case 'marks':
      return layer.values.map((mark) => ({
        left: x.at(mark.x) - 1,
        right: x.at(mark.x) + 1,
        top: ruleTops.get(mark) ?? top,
        bottom,
      }));
    case 'points':
      return layer.values.map((value) => {
        const [at, middle] = [x.at(value.x) + (aside.get(value) ?? 0), y.at(value.y)];
        return {
          left: at - MARK_PX,
          right: at + MARK_PX,
          top: Math.min(middle - MARK_PX, y.at(value.high ?? value.y)),
          bottom: Math.max(middle + MARK_PX, y.at(value.low ?? value.y)),
        };
      });
    default:
      return [];
  }
}

function curveBoxes(values: readonly Value[], { x, y, left, right }: Plot): Box[] {
  const pxOf = (at: number) => x.from + ((at - left) / (right - left)) * (x.to - x.from);
  return Array.from(
    { length: Math.ceil((right - left) / STEP_PX) },
    (_, step) => left + step * STEP_PX,
  ).flatMap((at) => {
    const ends = [at, at + STEP_PX].flatMap((px) => {
      const value = valueAt(values, pxOf(px));
      return value ? [y.at(value.y)] : [];
    });
    if (ends.length === 0) return [];
    return [{ left: at, right: at + STEP_PX, top: Math.min(...ends) - 1, bottom: Math.max(...ends) + 1 }];
  });
}
