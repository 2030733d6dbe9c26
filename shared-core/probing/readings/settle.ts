import { median, robustSpread } from '../../wood/maths/robust.ts';
import type { ReadingUnit } from '../../wood/moisture/corrected.ts';
import { mcAtLog10Ohms } from '../../wood/moisture/resistance.ts';
import { resistanceCurves } from '../../wood/moisture/resistance-curves.ts';
import { USUAL_SCALE } from '../../wood/moisture/scale.ts';

/**
 * Turns the live stream of a pin meter into at most one reading per insertion. Pins drift for a second or two after
 * they go in; the value is saved when it has stopped drifting, and no other is saved until the pins have been out or
 * the value has jumped, as it does when the pins move faster than the meter sends.
 *
 * The thresholds are ours, chosen by `tests/bench/settling.bench.ts` on made-up insertions.
 */

/** One live value, `atMs` on a clock that only runs forward; `value` null where the meter says open circuit or sent something unreadable. */
export type Sample = { atMs: number; value: number | null };

export type SettlingPhase = 'pins-out' | 'drifting' | 'settled';

/** What the detector remembers between samples. Plain data. */
export type SettlingState = {
  readonly unit: ReadingUnit;
  /** Values outside this are an open circuit or a short, not wood; in the meter's unit. */
  readonly range: { readonly min: number; readonly max: number };
  readonly phase: SettlingPhase;
  /** The newest values since the pins last went in, or moved, oldest first. */
  readonly window: readonly Point[];
  /** Values far from the window, not yet believed. */
  readonly strays: readonly Point[];
  readonly lastAtMs: number | null;
  /** When the last value arrived, for telling a bounce of the contacts from pins lifted. */
  readonly lastValueAtMs: number | null;
  /** The coarsest steps that all values so far are multiples of: 1, 0.5, or 0 for finer ones. */
  readonly steps: number;
};

/** `sent` as it came, `y` on the detector's scale, % MC or about as much. */
type Point = { readonly atMs: number; readonly sent: number; readonly y: number };

export type SettlingResult = {
  state: SettlingState;
  phase: SettlingPhase;
  /** True for one sample only: the reading of this insertion is `value`, now. */
  settledNow: boolean;
  /** Width of the middle four fifths of the newest values, in the meter's unit; null with pins out. */
  spread: number | null;
  /**
   * The middle one of the values in the newer half of the window, so that it is one the meter sent; in the meter's
   * unit, null with pins out.
   */
  value: number | null;
};

/** A value in % that moves by less than this each second, in the newer half of the time, is at rest. */
export const STEADY_PCT = 0.05;
/** Over the whole time it may have moved by so much each second, the same way: it runs to its end. */
const RUNNING_OUT_PCT = 0.125;
/** Surely less each second than this: slow electrodes creep on for four seconds, so less than half a point is to come. */
const SURELY_PCT = 0.1;
/** This many standard errors count as sure. */
const SURE = 2;
/** Of a display in steps of 0.1: their standard deviation is 0.1 / √12. */
const LEAST_NOISE_PCT = 0.03;
/** The pins are watched for so long at least, ms. */
export const WINDOW_MS = 1400;
/** The longest that a value is watched before it counts as at rest, ms. */
const LONGEST_MS = 5000;
/** However slow the meter, so many values are needed before one is saved. */
const FEWEST = 6;
/** Values nearer together than this in time are passed over: 250 a second is more than enough. */
const SHORTEST_GAP_MS = 4;
/** No value for so long, and at least one open circuit in it, means that the pins are out. A bounce is shorter. */
const OUT_MS = 250;
/** From the first stray value to the last it must be this long before they count as a new insertion. */
const STRAY_MS = 150;
/** A display in such steps must not change for so long, ms: it shows only now and then that the value moves. */
const COARSE_MS = (steps: number): number => (steps === 1 ? 2700 : steps === 0.5 ? 2300 : 0);
/** And for so many times as long as it showed the value before. */
const LONGER_THAN_BEFORE = 2.5;
/** Each turn back and forth adds so much, ms. */
const PER_TURN_MS = 1500;

const usualCurve = resistanceCurves.get(USUAL_SCALE.curveId)!;

const SCALES = {
  pct: (value: number) => value,
  /** What a meter of the usual scale would show: the same thresholds hold for both. */
  ohm: (value: number) => mcAtLog10Ohms(usualCurve, Math.log10(value)).mcPct,
} as const;
const wetter = (y: number): number => Math.max(1, y / 15);
const widest = (y: number, steps: number): number => Math.max(0.55 * wetter(y), 1.01 * steps);
const jump = (y: number): number => Math.max(1.5, 0.12 * y);

/** Whether two values in the same unit lie so far apart that they are of different insertions. */
export function isJump(unit: ReadingUnit, from: number, to: number): boolean {
  const y = SCALES[unit](from);
  return Math.abs(SCALES[unit](to) - y) > jump(y);
}
/** A turn of the value by more than this is no noise. */
const turn = (y: number, steps: number): number => Math.max(0.5 * wetter(y), 1.01 * steps);

/** Range of live values that can come from wood, where a meter does not say its own. */
const WIDEST_RANGE = { pct: { min: 0.1, max: 200 }, ohm: { min: 1e3, max: 1e12 } } as const;

export function startSettling(
  unit: ReadingUnit,
  range: { min: number; max: number } | null = null,
): SettlingState {
  return {
    unit,
    range: range ?? WIDEST_RANGE[unit],
    phase: 'pins-out',
    window: [],
    strays: [],
    lastAtMs: null,
    lastValueAtMs: null,
    steps: unit === 'pct' ? 1 : 0,
  };
}

/** Takes in one sample. Time comes from the samples only; one that is older than the last is passed over. */
export function step(state: SettlingState, sample: Sample): SettlingResult {
  const { atMs } = sample;
  if (!Number.isFinite(atMs) || (state.lastAtMs !== null && atMs < state.lastAtMs + SHORTEST_GAP_MS))
    return resultOf(state, false);

  const value = readable(sample.value, state);
  if (value === null) return resultOf(withoutContact(state, atMs), false);

  const point: Point = { atMs, sent: value, y: SCALES[state.unit](value) };
  const steps = stepsOf(state.steps, value);
  const next = withValue({ ...state, steps, lastAtMs: atMs, lastValueAtMs: atMs }, point);
  if (next.phase === 'drifting' && isSteady(next)) return resultOf({ ...next, phase: 'settled' }, true);
  return resultOf(next, false);
}

function stepsOf(before: number, value: number): number {
  const isMultiple = (steps: number) => Math.abs(value / steps - Math.round(value / steps)) < 1e-6;
  return [1, 0.5].find((steps) => steps <= before && isMultiple(steps)) ?? 0;
}

function readable(value: number | null, { range }: SettlingState): number | null {
  if (value === null || !Number.isFinite(value) || value <= 0) return null;
  return value < range.min || value > range.max ? null : value;
}

function withoutContact(state: SettlingState, atMs: number): SettlingState {
  const isBounce = atMs - (state.lastValueAtMs ?? atMs) < OUT_MS;
  return { ...state, lastAtMs: atMs, phase: isBounce ? state.phase : 'pins-out' };
}

function withValue(state: SettlingState, point: Point): SettlingState {
  if (state.phase === 'pins-out') return { ...state, phase: 'drifting', window: [point] };
  if (state.phase === 'settled' && isStray(state, point)) {
    const strays = [...state.strays, point];
    const moved = point.atMs - strays[0]!.atMs >= STRAY_MS;
    return moved ? { ...state, phase: 'drifting', window: strays } : { ...state, strays };
  }
  return { ...state, window: recent([...state.window, point], LONGEST_MS), strays: [] };
}

function isStray({ window }: SettlingState, point: Point): boolean {
  const center = median(recent(window, WINDOW_MS).map((each) => each.y));
  return Math.abs(point.y - center) > jump(center);
}

function recent(points: readonly Point[], ms: number): Point[] {
  const newest = points.at(-1)!.atMs;
  return points.filter((each, index) => newest - each.atMs <= ms || points.length - index <= FEWEST);
}

/** How long it must be at rest, by what it did before. */
function neededMs(window: readonly Point[], steps: number): number {
  const values = calmed(window);
  const center = values.at(-1)!.y;
  const most = turn(center, steps);
  let turns = 0;
  let way = 0;
  let from = values[0]!.y;
  for (const { y } of values) {
    const by = y - from;
    if (way !== 0 && Math.sign(by) === -way && Math.abs(by) > most) {
      turns += 1;
      way = Math.sign(by);
      from = y;
    } else if (way === 0 ? Math.abs(by) > most : Math.sign(by) === way) {
      way = Math.sign(by);
      from = y;
    }
  }
  const before = steps > 0 ? plateauBefore(values) : 0;
  return Math.min(
    0.92 * LONGEST_MS,
    Math.max(WINDOW_MS, COARSE_MS(steps), LONGER_THAN_BEFORE * before) + PER_TURN_MS * turns,
  );
}

/** How long the display showed one value before the one that it shows now, ms; 0 where it flickers between them. */
function plateauBefore(values: readonly Point[]): number {
  let index = values.length - 1;
  const now = values[index]!.y;
  while (index >= 0 && values[index]!.y === now) index -= 1;
  if (index < 0) return 0;
  const before = values[index]!.y;
  const to = values[index]!.atMs;
  while (index > 0 && values[index - 1]!.y === before) index -= 1;
  return to - values[index]!.atMs;
}

/** Without lone spikes: each value is the middle one of three. */
function calmed(window: readonly Point[]): Point[] {
  if (window.length < 3) return [...window];
  return window.map((point, index) => {
    const at = Math.min(window.length - 2, Math.max(1, index));
    const y = median([window[at - 1]!.y, window[at]!.y, window[at + 1]!.y]);
    return { ...point, y };
  });
}

/** Whether the values of the window, or of its end, surely moved slowly enough, and lie close enough together. */
function isSteady({ window, steps }: SettlingState): boolean {
  const first = window[0]!;
  const last = window.at(-1)!;
  const spanMs = last.atMs - first.atMs;
  if (window.length < FEWEST || spanMs < WINDOW_MS) return false;
  const needed = neededMs(window, steps);
  if (spanMs < needed) return false;
  for (let ms = needed; ms <= LONGEST_MS; ms *= 1.3) {
    if (ms > spanMs + 1) break;
    const part = recent(window, ms);
    if (part.length >= FEWEST && isRest(part, steps)) return true;
  }
  return false;
}

function isRest(part: readonly Point[], steps: number): boolean {
  const points = calmed(part);
  const { low, high } = middle(part);
  const center = median(points.map(({ y }) => y));
  if (high - low > widest(center, steps)) return false;
  // A coarse display that flickers between two values is at rest between them; a step without a way back is a movement.
  if (steps > 0) return points.at(-1)!.y === points[0]!.y;
  const whole = rateOf(points, part);
  const half = Math.floor(points.length / 2);
  const newer = rateOf(points.slice(half), part.slice(half));
  const [total, now] = [Math.abs(whole.perSecond), Math.abs(newer.perSecond)];
  // Where it turns back, the value seems at rest for a moment.
  const isOneWay = whole.perSecond * newer.perSecond > 0;
  return (
    now <= STEADY_PCT &&
    total <= (isOneWay ? RUNNING_OUT_PCT : STEADY_PCT) &&
    now + SURE * newer.error <= SURELY_PCT &&
    SURE * whole.error <= SURELY_PCT
  );
}

/**
 * The slope of a straight line through values, and its standard error, points a second.
 * @param sent  the same values with their spikes: what was smoothed looks surer than it is
 */
function rateOf(points: readonly Point[], sent: readonly Point[]): { perSecond: number; error: number } {
  const n = points.length;
  const meanMs = points.reduce((sum, { atMs }) => sum + atMs, 0) / n;
  const mean = points.reduce((sum, { y }) => sum + y, 0) / n;
  const squares = points.reduce((sum, { atMs }) => sum + (atMs - meanMs) ** 2, 0);
  const perMs = points.reduce((sum, { atMs, y }) => sum + (atMs - meanMs) * (y - mean), 0) / squares;
  const noise = robustSpread(sent.map(({ atMs, y }) => y - mean - perMs * (atMs - meanMs)));
  return { perSecond: 1000 * perMs, error: (1000 * Math.max(LEAST_NOISE_PCT, noise)) / Math.sqrt(squares) };
}

function resultOf(state: SettlingState, settledNow: boolean): SettlingResult {
  if (state.phase === 'pins-out') return { state, phase: 'pins-out', settledNow, spread: null, value: null };
  const window = recent(state.window, WINDOW_MS);
  const sorted = window.map(({ sent }) => sent).sort((a, b) => a - b);
  const cut = Math.floor(sorted.length / 10);
  const newer = window.slice(-Math.max(3, Math.ceil(window.length / 2))).sort((a, b) => a.y - b.y);
  return {
    state,
    phase: state.phase,
    settledNow,
    spread: sorted[sorted.length - 1 - cut]! - sorted[cut]!,
    value: newer[Math.floor((newer.length - 1) / 2)]!.sent,
  };
}

/** The middle four fifths of the window: a lone spike at either end does not count as unrest. */
function middle(window: readonly Point[]): { low: number; high: number } {
  const sorted = window.map((each) => each.y).sort((a, b) => a - b);
  const cut = Math.floor(sorted.length / 10);
  return { low: sorted[cut]!, high: sorted[sorted.length - 1 - cut]! };
}
