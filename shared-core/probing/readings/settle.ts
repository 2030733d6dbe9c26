import { median } from '../../wood/maths/robust.ts';
import type { ReadingUnit } from '../../wood/moisture/corrected.ts';

/**
 * Turns the live stream of a pin meter into at most one reading per insertion. Pins drift for a second or two after
 * they go in; the value is saved when it has stopped drifting, and no other is saved until the pins have been out or
 * the value has jumped, as it does when the pins move faster than the meter sends.
 *
 * The thresholds are common practice, no source: a hand-held meter shows 0.1 %, and 0.2 % of MC per second is where
 * a person watching the display would call it steady.
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
  /** The newest values, oldest first, on the detector's scale. */
  readonly window: readonly Point[];
  /** Values far from the window, not yet believed. */
  readonly strays: readonly Point[];
  readonly lastAtMs: number | null;
  /** When the last value arrived, for telling a bounce of the contacts from pins lifted. */
  readonly lastValueAtMs: number | null;
};

/** `sent` as it came, `y` on the detector's scale. */
type Point = { readonly atMs: number; readonly sent: number; readonly y: number };

export type SettlingResult = {
  state: SettlingState;
  phase: SettlingPhase;
  /** True for one sample only: the reading of this insertion is `value`, now. */
  settledNow: boolean;
  /** Width of the middle four fifths of the window's values, in the meter's unit; null with pins out. */
  spread: number | null;
  /**
   * The middle one of the values in the newer half of the window, so that it is one the meter sent; in the meter's
   * unit, null with pins out.
   */
  value: number | null;
};

/** A value in % that moves by less than this each second is at rest, more in wet wood. */
export const STEADY_PCT = 0.2;
/** Length of the window, ms; the pins are watched for at least four fifths of it. */
export const WINDOW_MS = 1500;
/** However slow the meter, so many values are needed before one is saved. */
const FEWEST = 4;
/** Values nearer together than this in time are passed over: 250 a second is more than enough. */
const SHORTEST_GAP_MS = 4;
/** No value for so long, and at least one open circuit in it, means that the pins are out. A bounce is shorter. */
const OUT_MS = 250;
/** A stray value must last this long, and be more than one, before it counts as a new insertion. */
const STRAY_MS = 150;

/**
 * A meter in % is judged on a scale of %, with room growing in proportion in wet wood; one in ohms on log10 ohms,
 * where 1 % of MC is about 0.3 of a decade around 12 %
 * (FPL-GTR-6, Table 1, commercial red oak: 125 MΩ at 12 %, 63 MΩ at 13 %).
 */
const SCALES = {
  pct: {
    toScale: (value: number) => value,
    fromScale: (y: number) => y,
    steadyPerSecond: (y: number) => Math.max(STEADY_PCT, 0.015 * y),
    widest: (y: number) => Math.max(0.8, 0.06 * y),
    jump: (y: number) => Math.max(1.5, 0.12 * y),
  },
  ohm: {
    toScale: Math.log10,
    fromScale: (y: number) => 10 ** y,
    steadyPerSecond: () => 0.05,
    widest: () => 0.2,
    jump: () => 0.45,
  },
} as const;

/** Range of live values that can come from wood, where a meter does not say its own. */
const WIDEST_RANGE = { pct: { min: 0.1, max: 200 }, ohm: { min: 1e3, max: 1e12 } } as const;

/**
 * The state before the first sample.
 *
 * @param unit  what the meter sends
 * @param range smallest and largest value that the meter can show of wood, in its unit, above 0; null when not known
 */
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
  };
}

/** Takes in one sample. Time comes from the samples only; one that is older than the last is passed over. */
export function step(state: SettlingState, sample: Sample): SettlingResult {
  const { atMs } = sample;
  if (!Number.isFinite(atMs) || (state.lastAtMs !== null && atMs < state.lastAtMs + SHORTEST_GAP_MS))
    return resultOf(state, false);

  const value = readable(sample.value, state);
  if (value === null) return resultOf(withoutContact(state, atMs), false);

  const point: Point = { atMs, sent: value, y: SCALES[state.unit].toScale(value) };
  const next = withValue({ ...state, lastAtMs: atMs, lastValueAtMs: atMs }, point);
  if (next.phase === 'drifting' && isSteady(next)) return resultOf({ ...next, phase: 'settled' }, true);
  return resultOf(next, false);
}

function readable(value: number | null, { range }: SettlingState): number | null {
  if (value === null || !Number.isFinite(value) || value <= 0) return null;
  return value < range.min || value > range.max ? null : value;
}

function withoutContact(state: SettlingState, atMs: number): SettlingState {
  const bounce = state.lastValueAtMs !== null && atMs - state.lastValueAtMs < OUT_MS;
  if (bounce && state.phase !== 'pins-out') return { ...state, lastAtMs: atMs };
  return { ...state, lastAtMs: atMs, phase: 'pins-out', window: [], strays: [] };
}

function withValue(state: SettlingState, point: Point): SettlingState {
  if (state.phase === 'pins-out') return { ...state, phase: 'drifting', window: [point], strays: [] };
  if (state.phase === 'settled' && isStray(state, point)) {
    const strays = [...state.strays, point];
    const moved = strays.length > 1 && point.atMs - strays[0]!.atMs >= STRAY_MS;
    return moved ? { ...state, phase: 'drifting', window: strays, strays: [] } : { ...state, strays };
  }
  return { ...state, window: recent([...state.window, point]), strays: [] };
}

function isStray({ window, unit }: SettlingState, point: Point): boolean {
  const center = median(window.map((each) => each.y));
  return Math.abs(point.y - center) > SCALES[unit].jump(center);
}

function recent(points: Point[]): Point[] {
  const newest = points.at(-1)!.atMs;
  return points.filter((each, index) => newest - each.atMs <= WINDOW_MS || points.length - index <= FEWEST);
}

/** Whether the window is long and full enough, has stopped moving, and is not wider than noise should make it. */
function isSteady({ window, unit }: SettlingState): boolean {
  const first = window[0]!;
  const last = window.at(-1)!;
  if (window.length < FEWEST || last.atMs - first.atMs < 0.8 * WINDOW_MS) return false;
  const half = Math.floor(window.length / 2);
  const older = window.slice(0, half);
  const newer = window.slice(window.length - half);
  const center = median(newer.map((each) => each.y));
  const seconds = (median(newer.map((each) => each.atMs)) - median(older.map((each) => each.atMs))) / 1000;
  const perSecond = Math.abs(center - median(older.map((each) => each.y))) / seconds;
  const { low, high } = middle(window);
  const scale = SCALES[unit];
  return perSecond <= scale.steadyPerSecond(center) && high - low <= scale.widest(center);
}

function resultOf(state: SettlingState, settledNow: boolean): SettlingResult {
  if (state.phase === 'pins-out') return { state, phase: 'pins-out', settledNow, spread: null, value: null };
  const { window, phase, unit } = state;
  const { fromScale } = SCALES[unit];
  const { low, high } = middle(window);
  const newer = window.slice(Math.floor(window.length / 2)).sort((a, b) => a.y - b.y);
  return {
    state,
    phase,
    settledNow,
    spread: fromScale(high) - fromScale(low),
    value: newer[Math.floor((newer.length - 1) / 2)]!.sent,
  };
}

/** The middle four fifths of the window: a lone spike at either end does not count as unrest. */
function middle(window: readonly Point[]): { low: number; high: number } {
  const sorted = window.map((each) => each.y).sort((a, b) => a - b);
  const cut = Math.floor(sorted.length / 10);
  return { low: sorted[cut]!, high: sorted[sorted.length - 1 - cut]! };
}
