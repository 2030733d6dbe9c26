import { appendFileSync } from 'node:fs';

/** One figure of a bench beside its goal. */
export interface Figure {
  /** What was measured, in a few words: it is a cell of the table. */
  what: string;
  value: number;
  /** Of the value and of the bare one; none where it is a count or a ratio. */
  unit: '' | 'ms' | 's' | '%' | 'MB' | 'kB';
  goal: Goal;
  /**
   * The same of what does nothing but the part that no program can leave out, measured in the same run. On a busy
   * machine both are slower, so their ratio says more than the value.
   */
  bare?: number;
  /** Why it misses its goal, where that is known and is to stay so. */
  missesBecause?: string;
}

/** What holds of a figure that meets its goal; `timesBare` is of its ratio to the bare one. */
export interface Goal {
  most?: number;
  least?: number;
  timesBare?: number;
}

/** Where `npm run bench` (`goals.ts`) collects the figures of a bench, each as a line of JSON. */
export const FIGURES_FILE = 'PINTALLY_FIGURES';

/**
 * Prints a figure as a row of the table, and gives it to `npm run bench` where that runs the bench.
 * @returns whether it meets its goal
 * @throws RangeError where nothing was measured
 */
export function figure(measured: Figure): boolean {
  if (!Number.isFinite(measured.value)) throw new RangeError(`No figure: ${measured.what}.`);
  console.log(rowOf(measured));
  const file = process.env[FIGURES_FILE];
  if (file !== undefined) appendFileSync(file, `${JSON.stringify(measured)}\n`);
  return meetsGoal(measured);
}

export function meetsGoal({ value, goal, bare }: Figure): boolean {
  const { most = Number.POSITIVE_INFINITY, least = Number.NEGATIVE_INFINITY, timesBare } = goal;
  return value <= most && value >= least && (timesBare === undefined || value <= timesBare * (bare ?? 0));
}

export const headOfTable: string = cells('figure', 'value', 'goal', 'bare', 'ratio');

export function rowOf(measured: Figure): string {
  const { what, value, unit, goal, bare } = measured;
  const inUnit = (amount: number) => `${shown(amount)}${unit === '' || unit === '%' ? unit : ` ${unit}`}`;
  const row = cells(
    what,
    inUnit(value),
    goalShown(goal),
    bare === undefined ? '' : inUnit(bare),
    bare === undefined ? '' : shown(value / bare),
  );
  return meetsGoal(measured) ? row : `${row}  MISS`;
}

function goalShown({ most, least, timesBare }: Goal): string {
  const range =
    most !== undefined && least !== undefined
      ? [`${shown(least)} to ${shown(most)}`]
      : [most === undefined ? [] : `≤ ${shown(most)}`, least === undefined ? [] : `≥ ${shown(least)}`].flat();
  return [...range, timesBare === undefined ? [] : `≤ ${shown(timesBare)} × bare`].flat().join(', ');
}

function cells(what: string, ...rest: [value: string, goal: string, bare: string, ratio: string]): string {
  const [value, goal, bare, ratio] = rest;
  return [what.padEnd(58), value.padStart(10), goal.padStart(20), bare.padStart(10), ratio.padStart(7)].join(
    ' ',
  );
}

const shown = (amount: number): string =>
  amount.toLocaleString('en-US', { maximumSignificantDigits: 3, useGrouping: false });
