import type { ChartDescription, Layer, Tick, Value } from './description.ts';
import { needsLegend, placeLayerWords } from './layer-words.ts';
import { LINE_PX, TEXT_PX, type Word, widthOf, wordPlacer } from './place-words.ts';
import { linearScale, niceTicks, type Scale } from './scale.ts';
import { shownLayers } from './shown-layers.ts';

/** Where everything of a chart is at a width, px. */
export interface Layout {
  width: number;
  height: number;
  x: Scale;
  y: Scale;
  left: number;
  right: number;
  top: number;
  bottom: number;
  /** Where intervals are, between the values and the x axis. */
  laneY: number;
  xTicks: readonly Tick[];
  yTicks: readonly Tick[];
  layers: readonly Layer[];
  words: readonly Word[];
  /** What no words beside it explain. */
  legend: readonly (Layer & { name: string })[];
  /** Where the rule of a mark begins: under its word. */
  ruleTops: ReadonlyMap<object, number>;
  /** How far points with whiskers move aside, so that none hides another's. */
  aside: ReadonlyMap<Value, number>;
}

const RIGHT_PX = 14;
/** The title of the y axis is above the plot. */
const TITLE_PX = 24;
/** The room for a bar and its text. */
const LANE_PX = 42;
const BAR_PX = 14;
const MOST_WORD_LINES = 3;
/** Least room between two labels of an axis, px. */
const LABEL_GAP_PX = 8;
const Y_TICKS = 5;
/** Points nearer than this move aside, px. */
const ASIDE_PX = 9;

export function layoutOf(chart: ChartDescription, width: number): Layout {
  const layers = shownLayers(chart);
  const yTicks = yTicksOf(chart, layers);
  const left = Math.max(...yTicks.map(({ label }) => widthOf(label))) + 10;
  const right = width - RIGHT_PX;
  const x = linearScale(chart.x.from, chart.x.to, left, right);
  const xTicks = ticksWithRoom(chart, x);
  const { place, placed, reserve } = wordPlacer(width);
  reserve({ text: chart.y.title, x: 0, y: TEXT_PX, anchor: 'start' });

  const ruleTops = new Map<object, number>();
  let top = TITLE_PX;
  for (const mark of layers.flatMap((layer) => (layer.kind === 'marks' ? layer.values : []))) {
    const at = x.at(mark.x);
    const word = place(
      { text: mark.word, isName: mark.isName },
      Array.from({ length: MOST_WORD_LINES }, (_, line) => TITLE_PX + TEXT_PX + line * LINE_PX).flatMap(
        (y) => [
          { x: at + 4, y, anchor: 'start' as const },
          { x: at - 4, y, anchor: 'end' as const },
        ],
      ),
    );
    if (word) ruleTops.set(mark, word.y - TEXT_PX + 2);
    top = Math.max(top, word ? word.y + 6 : 0);
  }
  const laneTop = Math.round(top + 6 + Math.min(Math.max(width * 0.4, 170), 270));
  const laneY = laneTop + BAR_PX;
  const bottom = laneTop + (layers.some(({ kind }) => kind === 'interval') ? LANE_PX : 0);
  const height = bottom + LINE_PX * (xTicks.some(({ year }) => year) ? 3 : 2) + 6;
  const y = linearScale(yTicks[0]!.at, yTicks.at(-1)!.at, laneTop, top + 6);
  for (const { at, label } of xTicks) {
    reserve({ text: label, x: x.at(at), y: bottom + 18, anchor: 'middle' });
  }
  for (const { at, label } of yTicks) reserve({ text: label, x: left - 6, y: y.at(at) + 4, anchor: 'end' });
  for (const layer of layers) placeLayerWords(layer, { x, y, left, right, laneY }, place);
  return {
    width,
    height,
    x,
    y,
    left,
    right,
    top,
    bottom,
    laneY,
    xTicks,
    yTicks,
    layers,
    words: placed,
    legend: layers.filter((layer) => needsLegend(layer, placed)),
    ruleTops,
    aside: asideOf(layers, x),
  };
}

function yTicksOf({ y }: ChartDescription, layers: readonly Layer[]): Tick[] {
  const values = layers.flatMap((layer) => {
    if (layer.kind === 'marks' || layer.kind === 'interval') return [];
    if (layer.kind === 'level') return [layer.y];
    if (layer.kind === 'target') return [layer.low, layer.high];
    return layer.values.flatMap(({ y: value, low, high }) => [value, low ?? value, high ?? value]);
  });
  const lowest = y.startsAtZero ? Math.min(0, ...values) : Math.min(...values);
  const ticks = niceTicks(lowest, Math.max(...values, y.reaches ?? 0), Y_TICKS);
  return ticks.map((at) => ({ at, label: y.tickText(at) }));
}

/** As many ticks as there are with no label on another. */
function ticksWithRoom({ x: axis }: ChartDescription, x: Scale): readonly Tick[] {
  const room = x.at(axis.to) - x.at(axis.from);
  for (let most = Math.max(2, Math.floor(room / (LABEL_GAP_PX + 22))); ; most--) {
    const ticks = axis.ticks(most);
    const isCrowded = ticks.some(({ at, label }, index) => {
      const before = ticks[index - 1];
      if (!before) return false;
      const half = (widthOf(label) + widthOf(before.label)) / 2;
      return x.at(at) - x.at(before.at) < half + LABEL_GAP_PX;
    });
    if (!isCrowded || most <= 2) return ticks;
  }
}

function asideOf(layers: readonly Layer[], x: Scale): Map<Value, number> {
  const values = layers
    .flatMap((layer) => (layer.kind === 'points' ? layer.values : []))
    .filter(({ low }) => low !== undefined)
    .sort((a, b) => a.x - b.x);
  const groups: Value[][] = [];
  for (const value of values) {
    const group = groups.at(-1);
    if (group && x.at(value.x) - x.at(group[0]!.x) < ASIDE_PX) group.push(value);
    else groups.push([value]);
  }
  return new Map(
    groups.flatMap((group) =>
      group.map((value, index) => [value, (index - (group.length - 1) / 2) * ASIDE_PX] as const),
    ),
  );
}
