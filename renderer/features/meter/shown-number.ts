import type { ShownNumber } from '../../../shared-core/gatt/shown-number.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import type { DisplayUnit } from '../../stores/watching.ts';

/** How many ohms a display counts in; 1 for %. */
export const displayUnits: Readonly<Record<DisplayUnit, number>> = {
  pct: 1,
  kiloohm: 1e3,
  megaohm: 1e6,
  gigaohm: 1e9,
};

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
