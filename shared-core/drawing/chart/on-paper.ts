import { MM_PER_POINT } from '../../measures.ts';
import { fittedText, printableText, textWidthMm } from '../fitted-text.ts';
import type { Operation, PathOperation, Shade } from '../page.ts';
import type { ChartDescription, Color, Layer, Tick, Value } from './description.ts';
import { type Layout, layoutOf } from './layout.ts';
import { dashes, pointPath } from './mark-paths.ts';
import { LINE_PX, TEXT_PX } from './place-words.ts';

/** All text of a chart on paper. */
const TEXT_PT = 8;
/** So that a text of the layout has that size. */
const MM_PER_PX = (TEXT_PT * MM_PER_POINT) / TEXT_PX;
const LEGEND_LINE_PX = 22;
const SYMBOL_PX = 34;
const LEGEND_GAP_PX = 16;

/** Where colors differ on screen, lines and shapes differ on paper. */
const shades: Record<Color, Shade> = {
  accent: 'black',
  ink: 'black',
  'ink-soft': 'gray',
  'line-strong': 'gray',
  ready: 'black',
  'bring-in': 'black',
  'keep-drying': 'black',
};

/** Later ones are drawn over earlier ones, as on screen. */
const inOrder: readonly Layer['kind'][] = ['target', 'marks', 'line', 'level', 'interval', 'points'];

export interface PaperChart {
  heightMm: number;
  /** With its upper left corner there. */
  at: (xMm: number, yMm: number) => Operation[];
}

/**
 * A chart in black and white as wide as asked for, from the same layout as on screen, with its legend under it.
 * @param widthMm  above 60
 */
export function chartOnPaper(chart: ChartDescription, widthMm: number): PaperChart {
  const layout = layoutOf(chart, widthMm / MM_PER_PX);
  const legend = legendOf(layout, widthMm / MM_PER_PX);
  const legendLines = legend.length === 0 ? 0 : legend.at(-1)!.line + 1;
  return {
    heightMm: (layout.height + legendLines * LEGEND_LINE_PX) * MM_PER_PX,
    at: (xMm, yMm) => {
      const draw = drawer(xMm, yMm, widthMm);
      return [
        ...layout.layers
          .filter(({ kind }) => kind === 'target')
          .flatMap((layer) => layerOn(layer, layout, draw)),
        ...axes(chart, layout, draw),
        ...layout.layers
          .filter(({ kind }) => kind !== 'target')
          .toSorted((a, b) => inOrder.indexOf(a.kind) - inOrder.indexOf(b.kind))
          .flatMap((layer) => layerOn(layer, layout, draw)),
        ...layout.words.flatMap((word) => [
          draw.ground(word),
          ...draw.text(word.text, word.x, word.y, word.anchor),
        ]),
        ...legend.flatMap(({ layer, x, line }) => {
          const y = layout.height + line * LEGEND_LINE_PX;
          return [...symbolOf(layer, x, y, draw), ...draw.text(layer.name, x + SYMBOL_PX, y + 15, 'start')];
        }),
      ];
    },
  };
}

type Drawer = ReturnType<typeof drawer>;
type Look = Partial<Pick<PathOperation, 'isFilled' | 'fill' | 'stroke' | 'dashMm'>> & { strokePx?: number };

/** Operations in mm from px of the layout. */
function drawer(xMm: number, yMm: number, widthMm: number) {
  const x = (px: number) => Number((xMm + px * MM_PER_PX).toFixed(3));
  const y = (px: number) => Number((yMm + px * MM_PER_PX).toFixed(3));
  function path(d: string, { strokePx, isFilled = false, ...look }: Look): Operation[] {
    if (d === '') return [];
    const strokeMm = strokePx === undefined ? null : strokePx * MM_PER_PX;
    return [{ kind: 'path', d, isFilled, strokeMm, ...look }];
  }
  const polyline = (points: readonly (readonly [number, number])[], close = '') =>
    points.length < 2 ? '' : `M${points.map(([px, py]) => `${x(px)} ${y(py)}`).join('L')}${close}`;
  /** No wider than the chart, and within it. */
  function text(words: string, px: number, py: number, anchor: 'start' | 'middle' | 'end'): Operation[] {
    const fitted = fittedText(words, 'regular', widthMm, TEXT_PT, TEXT_PT, 'end');
    if (fitted.text === '') return [];
    const before = { start: 0, middle: fitted.widthMm / 2, end: fitted.widthMm }[anchor];
    const left = Math.min(Math.max(x(px) - before, xMm), xMm + widthMm - fitted.widthMm);
    return [{ kind: 'text', ...fitted, xMm: left, baselineMm: y(py), face: 'regular' }];
  }
  return {
    x,
    y,
    polyline,
    path,
    text,
    /** White under a word, so that no line crosses it. */
    ground(word: { text: string; x: number; y: number; anchor: 'start' | 'middle' | 'end' }): Operation {
      const width = textWidthMm(printableText(word.text), 'regular', TEXT_PT) / MM_PER_PX;
      const left = word.x - { start: 0, middle: width / 2, end: width }[word.anchor];
      const [top, bottom] = [word.y - TEXT_PX + 2, word.y + 4];
      return {
        kind: 'path',
        d: polyline(
          [
            [left - 1, top],
            [left + width + 1, top],
            [left + width + 1, bottom],
            [left - 1, bottom],
          ],
          'Z',
        ),
        isFilled: true,
        fill: 'white',
        strokeMm: null,
      };
    },
  };
}

const dashOf = (stroke: keyof typeof dashes) => dashes[stroke]?.map((px) => px * MM_PER_PX);

function axes({ x: xAxis, y: yAxis }: ChartDescription, layout: Layout, draw: Drawer): Operation[] {
  const { left, right, bottom, height, x, y, xTicks, yTicks } = layout;
  const yearOf = ({ at, year }: Tick) =>
    year === undefined ? [] : draw.text(year, x.at(at), bottom + 18 + LINE_PX, 'middle');
  return [
    ...yTicks.flatMap(({ at, label }) => [
      ...draw.path(
        draw.polyline([
          [left, y.at(at)],
          [right, y.at(at)],
        ]),
        { strokePx: 0.6, stroke: 'light' },
      ),
      ...draw.text(label, left - 6, y.at(at) + 4, 'end'),
    ]),
    ...xTicks.flatMap((tick) => [
      ...draw.path(
        draw.polyline([
          [x.at(tick.at), bottom],
          [x.at(tick.at), bottom + 5],
        ]),
        { strokePx: 1 },
      ),
      ...draw.text(tick.label, x.at(tick.at), bottom + 18, 'middle'),
      ...yearOf(tick),
    ]),
    ...draw.path(
      draw.polyline([
        [left, bottom],
        [right, bottom],
      ]),
      { strokePx: 1.5 },
    ),
    ...draw.text(yAxis.title, 0, TEXT_PX, 'start'),
    ...draw.text(xAxis.title, right, height - 4, 'end'),
  ];
}

function layerOn(layer: Layer, layout: Layout, draw: Drawer): Operation[] {
  const { x, y, left, right, top, bottom, laneY, aside, ruleTops } = layout;
  const stroke = shades[layer.color];
  const curve = (values: readonly Value[], of: (value: Value) => number | undefined) =>
    draw.polyline(
      values.flatMap((value) => {
        const at = of(value);
        return at === undefined ? [] : [[x.at(value.x), y.at(at)] as const];
      }),
    );
  switch (layer.kind) {
    case 'target': {
      const [high, low] = [y.at(layer.high), y.at(layer.low)];
      const band = [
        [left, high],
        [right, high],
        [right, low],
        [left, low],
      ] as const;
      return draw.path(draw.polyline(band, 'Z'), {
        isFilled: true,
        fill: 'light',
        stroke: 'gray',
        strokePx: 0.8,
        dashMm: dashOf('dotted'),
      });
    }
    case 'line':
      return [
        // A filled band would hide the target: its ends are drawn instead.
        ...(['low', 'high'] as const).flatMap((end) =>
          draw.path(
            curve(layer.values, (value) => value[end]),
            { strokePx: 0.7, stroke: 'gray' },
          ),
        ),
        ...draw.path(
          curve(layer.values, (value) => value.y),
          { strokePx: layer.stroke === 'solid' ? 2.2 : 1.5, stroke, dashMm: dashOf(layer.stroke) },
        ),
      ];
    case 'level': {
      const from = x.at(Math.max(layer.from ?? x.from, x.from));
      const line = draw.polyline([
        [from, y.at(layer.y)],
        [right, y.at(layer.y)],
      ]);
      return draw.path(line, { strokePx: 1.2, stroke, dashMm: dashOf('dash-dot') });
    }
    case 'marks':
      return layer.values.flatMap((mark) =>
        draw.path(
          draw.polyline([
            [x.at(mark.x), ruleTops.get(mark) ?? top],
            [x.at(mark.x), bottom],
          ]),
          { strokePx: 1, stroke, dashMm: dashOf(layer.stroke) },
        ),
      );
    case 'interval': {
      const { from, to, likely } = layer;
      const end = to === null || to > x.to ? null : x.at(to);
      const shown = likely === null || likely > x.to || likely < x.from ? null : x.at(likely);
      return intervalMark(Math.max(left, x.at(from)), end, right, shown, laneY, draw);
    }
    case 'points':
      return [
        ...(layer.isJoined
          ? draw.path(
              curve(layer.values, (value) => value.y),
              { strokePx: 1.5, stroke },
            )
          : []),
        ...layer.values.flatMap((value) => {
          const at = x.at(value.x) + (aside.get(value) ?? 0);
          const { low, high } = value;
          return [
            ...(low === undefined || high === undefined ? [] : whisker(at, y.at(low), y.at(high), draw)),
            ...pointMark(layer.shape, at, y.at(value.y), draw),
          ];
        }),
      ];
  }
}

function pointMark(
  shape: Parameters<typeof pointPath>[0],
  px: number,
  py: number,
  draw: Drawer,
): Operation[] {
  return draw.path(pointPath(shape, draw.x(px), draw.y(py), MM_PER_PX), {
    isFilled: true,
    fill: shape === 'disc' ? 'black' : 'white',
    strokePx: 1.6,
  });
}

function whisker(px: number, from: number, to: number, draw: Drawer): Operation[] {
  const ends = [from, to].map((at) =>
    draw.polyline([
      [px - 3, at],
      [px + 3, at],
    ]),
  );
  const stem = draw.polyline([
    [px, from],
    [px, to],
  ]);
  return draw.path(stem + ends.join(''), { strokePx: 1 });
}

function intervalMark(
  from: number,
  to: number | null,
  end: number,
  likely: number | null,
  py: number,
  draw: Drawer,
): Operation[] {
  const upright = (at: number) =>
    draw.polyline([
      [at, py - 5],
      [at, py + 5],
    ]);
  const bar = draw.polyline([
    [from, py],
    [to ?? end, py],
  ]);
  return [
    ...draw.path(bar + upright(from) + (to === null ? '' : upright(to)), { strokePx: 2.4 }),
    ...(likely === null
      ? []
      : draw.path(pointPath('diamond', draw.x(likely), draw.y(py), MM_PER_PX), { isFilled: true })),
  ];
}

/** How a layer is drawn, in the 26 by 20 px of the legend. */
function symbolOf(layer: Layer, px: number, py: number, draw: Drawer): Operation[] {
  const stroke = shades[layer.color];
  const level = draw.polyline([
    [px, py + 10],
    [px + 26, py + 10],
  ]);
  switch (layer.kind) {
    case 'line':
      return draw.path(level, {
        strokePx: layer.stroke === 'solid' ? 2.2 : 1.5,
        stroke,
        dashMm: dashOf(layer.stroke),
      });
    case 'points':
      return [
        ...(layer.values.some(({ low }) => low !== undefined) ? whisker(px + 13, py + 1, py + 19, draw) : []),
        ...(layer.isJoined ? draw.path(level, { strokePx: 1.5, stroke }) : []),
        ...pointMark(layer.shape, px + 13, py + 10, draw),
      ];
    case 'level':
      return draw.path(level, { strokePx: 1.2, stroke, dashMm: dashOf('dash-dot') });
    case 'target': {
      const band = [
        [px, py + 4],
        [px + 26, py + 4],
        [px + 26, py + 16],
        [px, py + 16],
      ] as const;
      return draw.path(draw.polyline(band, 'Z'), {
        isFilled: true,
        fill: 'light',
        stroke: 'gray',
        strokePx: 0.8,
        dashMm: dashOf('dotted'),
      });
    }
    case 'interval':
      return intervalMark(px + 2, px + 24, px + 24, px + 13, py + 10, draw);
    case 'marks': {
      const upright = draw.polyline([
        [px + 13, py],
        [px + 13, py + 20],
      ]);
      return draw.path(upright, { strokePx: 1, stroke, dashMm: dashOf(layer.stroke) });
    }
  }
}

/** The legend in lines that fit. */
function legendOf(layout: Layout, width: number) {
  const items: { layer: Layer & { name: string }; x: number; line: number }[] = [];
  let [x, line] = [0, 0];
  for (const layer of layout.legend) {
    const text = textWidthMm(printableText(layer.name), 'regular', TEXT_PT) / MM_PER_PX;
    const room = SYMBOL_PX + text + LEGEND_GAP_PX;
    if (x > 0 && x + room > width) [x, line] = [0, line + 1];
    items.push({ layer, x, line });
    x += room;
  }
  return items;
}
