import type { Words } from '../../words/words.ts';
import type { ChartDescription, Layer, Value } from './description.ts';
import { shownLayers, valueAt } from './shown-layers.ts';

export interface Cell {
  text: string;
  /** Words that a table may put on several lines, and not a value. */
  isSentence?: boolean;
  isName?: boolean;
}

/** What is read at one x: a row of the table, by the heads of its columns. */
export interface Row {
  x: number;
  cells: Map<string, Cell>;
}

/** The table of a chart, which is also what the pointer and the arrow keys read out. */
export function tableOf(chart: ChartDescription, { say }: Words): { columns: string[]; rows: Row[] } {
  const { x, y } = chart;
  const layers = shownLayers(chart);
  const textOf = ({ y: value, low, high }: Value): Cell => ({
    text:
      low === undefined || high === undefined
        ? y.text(value)
        : say('chart.with-interval', { valueText: y.text(value), intervalText: y.intervalText(low, high) }),
  });
  const rows: Row[] = [];
  /** Into the row of that x, or of the same day; into another one where its columns are taken. */
  function enter({ x: at, cells }: Row): void {
    const row = rows.find(
      (each) => x.text(each.x) === x.text(at) && [...cells.keys()].every((name) => !each.cells.has(name)),
    );
    if (!row) rows.push({ x: at, cells });
    else for (const [name, cell] of cells) row.cells.set(name, cell);
  }
  for (const layer of layers) for (const row of rowsOf(layer, textOf)) enter(row);
  for (const stop of chart.stops ?? []) {
    if (stop >= x.from && stop <= x.to) enter({ x: stop, cells: new Map() });
  }
  for (const { name, values } of layers.filter((layer) => layer.kind === 'line')) {
    for (const row of rows) {
      const value = valueAt(values, row.x);
      if (name !== null && value && !row.cells.has(name)) row.cells.set(name, textOf(value));
    }
  }
  return {
    columns: columnsOf(layers),
    rows: rows.filter(({ cells }) => cells.size > 0).sort((a, b) => a.x - b.x),
  };
}

function rowsOf(layer: Layer, textOf: (value: Value) => Cell): Row[] {
  const { name } = layer;
  if (name === null) return [];
  if (layer.kind === 'interval') {
    return [
      { x: layer.likely ?? layer.from, cells: new Map([[name, { text: layer.text, isSentence: true }]]) },
    ];
  }
  if (layer.kind === 'marks') {
    return layer.values.map(({ x, word, isName }) => ({
      x,
      cells: new Map([[name, { text: word, isName }]]),
    }));
  }
  if (layer.kind !== 'points') return [];
  const { wordsName } = layer;
  return layer.values.map((value) => ({
    x: value.x,
    cells: new Map<string, Cell>([
      ...(wordsName && value.word ? [[wordsName, { text: value.word, isName: value.isName }] as const] : []),
      [name, textOf(value)],
      ...Object.entries(value.more ?? {}).map(([head, text]) => [head, { text }] as const),
    ]),
  }));
}

/** Levels and targets hold everywhere: they are written beside themselves, and are no columns. */
function columnsOf(layers: readonly Layer[]): string[] {
  const heads = layers.flatMap((layer) => [
    ...(layer.kind === 'points' && layer.wordsName ? [layer.wordsName] : []),
    ...(layer.name === null || layer.kind === 'level' || layer.kind === 'target' ? [] : [layer.name]),
    ...(layer.kind === 'points' ? layer.values.flatMap(({ more }) => Object.keys(more ?? {})) : []),
  ]);
  return [...new Set(heads)];
}
