import type { RowOfBoard } from './boards-of-table.ts';

/** Rows of readings that say the same in every cell as an earlier one. */
export interface RowsTwice {
  twice: { row: number; firstRow: number }[];
  /** Most boards have several rows a day: each is of a spot, and two spots may well read the same. */
  areSpots: boolean;
}

/**
 * @param cellsOf  what stands in a row
 */
export function rowsTwice(
  byCode: ReadonlyMap<string, readonly RowOfBoard[]>,
  cellsOf: (row: number) => readonly string[],
): RowsTwice {
  const twice: RowsTwice['twice'] = [];
  let days = 0;
  let daysInRows = 0;
  for (const group of byCode.values()) {
    const firstOf = new Map<string, number>();
    const rowsOn = new Map<string, number>();
    for (const { row, days: read } of group) {
      if (read.length === 0) continue;
      const key = JSON.stringify(cellsOf(row));
      const firstRow = firstOf.get(key);
      if (firstRow !== undefined) {
        twice.push({ row, firstRow });
        continue;
      }
      firstOf.set(key, row);
      for (const day of new Set(read.map((each) => each.day))) rowsOn.set(day, (rowsOn.get(day) ?? 0) + 1);
    }
    days += rowsOn.size;
    daysInRows += [...rowsOn.values()].filter((rows) => rows > 1).length;
  }
  return { twice, areSpots: daysInRows * 2 > days };
}
