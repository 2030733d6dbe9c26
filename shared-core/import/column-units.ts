import { type ColumnRole, type ColumnUnit, unitsOf } from '../contract/import.ts';
import type { DisplayUnits } from '../units/length.ts';
import { numberIn } from './cells.ts';
import { MOST_OF } from './table.ts';

/** What fits between these, in the unit, is the unit; the first that most of the column fits. */
const PLAUSIBLE: Partial<Record<ColumnRole, readonly [ColumnUnit, least: number, most: number][]>> = {
  thickness: [
    ['mm', 10, 200],
    ['in', 0.25, 6],
    ['cm', 1.5, 12],
  ],
  width: [
    ['mm', 60, 1200],
    ['in', 2.5, 40],
    ['cm', 8, 100],
  ],
  length: [
    ['mm', 500, 8000],
    ['m', 0.5, 7],
    ['ft', 3, 24],
    ['in', 24, 240],
    ['cm', 60, 700],
  ],
};

export function unitFor(
  role: ColumnRole,
  inHeader: ColumnUnit | null,
  cells: readonly string[],
  decimalMark: '.' | ',',
  units: DisplayUnits,
): ColumnUnit | null {
  const possible = unitsOf[role];
  if (!possible) return null;
  if (inHeader !== null && possible.includes(inHeader)) {
    // A % in the header, over shares of one.
    return inHeader === 'pct' && areShares(cells, decimalMark) ? 'share' : inHeader;
  }
  const imperial = units === 'imperial';
  const numbers = cells.flatMap((cell) => {
    const number = numberIn(cell, decimalMark);
    return number && number.unit === null && !cell.includes('/') ? [number.value] : [];
  });
  switch (role) {
    case 'reading':
    case 'humidity':
      return areShares(cells, decimalMark) ? 'share' : 'pct';
    case 'wood-temp':
    case 'air-temp': {
      // Wood is rarely above 45 °C, and a column all below 0 °F is no yard's.
      const most = Math.max(...numbers);
      return most > 45 ? 'f' : imperial && most > 15 ? 'f' : imperial && numbers.length === 0 ? 'f' : 'c';
    }
    case 'wet-weight':
    case 'dry-weight':
      return 'g';
    case 'depth':
      return imperial && cells.some((cell) => cell.includes('/'))
        ? 'in'
        : Math.max(0, ...numbers) > 3
          ? 'mm'
          : imperial
            ? 'in'
            : 'mm';
    default: {
      const candidates = PLAUSIBLE[role] ?? [];
      const own = imperial ? ['in', 'ft'] : ['mm', 'cm', 'm'];
      const sorted = candidates.toSorted((a, b) => Number(own.includes(b[0])) - Number(own.includes(a[0])));
      const fits = sorted.find(
        ([, least, most]) =>
          numbers.filter((number) => number >= least && number <= most).length >= MOST_OF * numbers.length,
      );
      if (numbers.length === 0) return imperial ? 'in' : 'mm';
      return fits?.[0] ?? (imperial ? 'in' : 'mm');
    }
  }
}

function areShares(cells: readonly string[], decimalMark: '.' | ','): boolean {
  const numbers = cells.flatMap((cell) => {
    const number = numberIn(cell, decimalMark);
    return number && number.unit === null ? [number.value] : [];
  });
  return numbers.length > 0 && numbers.every((number) => number > 0 && number < 1);
}
