/** A token of `tokens.css`. */
export type Color = 'accent' | 'ink' | 'ink-soft' | 'line-strong' | 'ready' | 'bring-in' | 'keep-drying';
export type Shape = 'disc' | 'ring' | 'square' | 'triangle' | 'diamond';
export type Stroke = 'solid' | 'dashed' | 'dotted' | 'dash-dot';

/** A labelled place on an axis. */
export interface Tick {
  at: number;
  label: string;
  /** Under the label, where it is another than before. */
  year?: string;
}

export interface XAxis {
  title: string;
  from: number;
  to: number;
  /** A value as it is read out. */
  text: (value: number) => string;
  /** About as many ticks as this; fewer are asked for until their labels have room. */
  ticks: (most: number) => readonly Tick[];
}

export interface YAxis {
  title: string;
  text: (value: number) => string;
  intervalText: (low: number, high: number) => string;
  tickText: (value: number) => string;
  startsAtZero: boolean;
  /** The axis reaches as far as this, whatever is drawn, so that several charts share one scale. */
  reaches?: number;
}

export interface Value {
  x: number;
  y: number;
  /** Where it likely lies. */
  low?: number;
  high?: number;
}

export interface PointValue extends Value {
  /** Beside the point. */
  word?: string;
  /** The word is a name that a person gave. */
  isName?: boolean;
  /** What else is known of it, by the heads of its columns in the table. */
  more?: Readonly<Record<string, string>>;
}

export interface MarkValue {
  x: number;
  word: string;
  isName?: boolean;
}

/** What a layer has in common: its name in the legend, in the table and read out; null where it has none there. */
interface Named {
  name: string | null;
  color: Color;
}

/** A curve, with a band where its values have an interval. */
export interface Line extends Named {
  kind: 'line';
  stroke: Stroke;
  values: readonly Value[];
}

/** Single values, each with a whisker where it has an interval. */
export interface Points extends Named {
  kind: 'points';
  shape: Shape;
  /** Whether a line leads from each to the next. */
  isJoined?: boolean;
  /** The head of the words' column in the table, where they are in it. */
  wordsName?: string;
  values: readonly PointValue[];
}

/** A value that holds from one end to the other, with a word at its right end. */
export interface Level extends Named {
  kind: 'level';
  y: number;
  from?: number;
  word: string;
}

/** A band across the chart with its name in it. */
export interface TargetBand extends Named {
  kind: 'target';
  low: number;
  high: number;
}

/** From one x to another, in a lane under the values, with a diamond where it likely is and its text below. */
export interface Interval extends Named {
  kind: 'interval';
  from: number;
  /** Null: open. */
  to: number | null;
  likely: number | null;
  text: string;
}

/** Rules from top to bottom, each with a word. */
export interface Marks extends Named {
  kind: 'marks';
  stroke: Stroke;
  values: readonly MarkValue[];
}

export type Layer = Line | Points | Level | TargetBand | Interval | Marks;

/** A chart, described once: its drawing, legend, table, what is read out and what is saved all follow from this. */
export interface ChartDescription {
  title: string;
  /** What it shows, in a sentence. */
  summary: string;
  x: XAxis;
  y: YAxis;
  /** In the order of the legend and of the table. The first words to be placed are the last to be left out. */
  layers: readonly Layer[];
  /** Where lines are read out, besides the x of every point. */
  stops?: readonly number[];
}
