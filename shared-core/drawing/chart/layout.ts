import type { ChartDescription, Layer, Tick, Value } from './description.ts';
import { boxesOf } from './layer-boxes.ts';
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
  /** How far points of one day move aside, so that none hides another's whisker. */
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
/** Points of one day move aside by this, and all of them by no more than that, px. */
const ASIDE_PX = 4;
const MOST_ASIDE_PX = 12;

export function layoutOf(chart: ChartDescription, width: number): Layout {
  const layers = shownLayers(chart);
  const yTicks = yTicksOf(chart, layers);
  const left = Math.max(...yTicks.map(({ label }) => widthOf(label))) + 10;
  const right = width - RIGHT_PX;
  const x = linearScale(chart.x.from, chart.x.to, left, right);
  const xTicks = ticksWithRoom(chart, x);
  const { place, placed, reserve, avoid } = wordPlacer(width);
  reserve({ text: chart.y.title, x: 0, y: TEXT_PX, anchor: 'start' });

  const ruleTops = new Map<object, number>();
  let top = TITLE_PX;
  const marks = layers.flatMap((layer) => (layer.kind === 'marks' ? layer.values : []));
  // From the left: a later rule begins under its own word, and so under every word that it would cut.
  for (const mark of marks.toSorted((a, b) => a.x - b.x)) {
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
  const aside = asideOf(chart, layers);
  const plot = { x, y, left, right, top, bottom, laneY, ruleTops, aside };
  for (const layer of layers) for (const box of boxesOf(layer, plot)) avoid(box);
  const rules = marks.map((mark) => x.at(mark.x));
  for (const layer of layers) placeLayerWords(layer, plot, rules, place);
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
    aside,
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

function asideOf({ x }: ChartDescription, layers: readonly Layer[]): Map<Value, number> {
  const days = new Map<string, Value[]>();
  for (const value of layers.flatMap((layer) => (layer.kind === 'points' ? layer.values : []))) {
    if (value.low !== undefined) days.set(x.text(value.x), [...(days.get(x.text(value.x)) ?? []), value]);
  }
  return new Map(
    [...days.values()].flatMap((ofDay) => {
      const last = ofDay.length - 1;
      const apart = Math.min(ASIDE_PX, MOST_ASIDE_PX / last);
      return ofDay.map((value, index) => [value, last === 0 ? 0 : (index - last / 2) * apart] as const);
    }),
  );
}
