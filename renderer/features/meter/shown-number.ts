import type { ShownNumber } from '../../../shared-core/gatt/propose.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';

/** What a display counts in, and how many ohms that are. */
export const displayUnits = { pct: 1, kiloohm: 1e3, megaohm: 1e6, gigaohm: 1e9 } as const;
export type DisplayUnit = keyof typeof displayUnits;

export const readingUnitOf = (unit: DisplayUnit): ReadingUnit => (unit === 'pct' ? 'pct' : 'ohm');

/** A number as it was typed off a display: "13.40" says that the display counts hundredths. */
export function shownNumber(
  value: number,
  typed: string,
  unit: DisplayUnit,
  { fromMs, toMs }: Pick<ShownNumber, 'fromMs' | 'toMs'>,
): ShownNumber {
  const decimals = /[.,](\d+)\s*$/.exec(typed)?.[1]?.length ?? 0;
  const factor = displayUnits[unit];
  return { value: value * factor, resolution: factor * Number(`1e-${decimals}`), fromMs, toMs };
}
