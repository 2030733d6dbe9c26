import { type ColumnRole, type ImportChoices, nameKey } from '../contract/import.ts';
import type { Message } from '../words/message.ts';
import { cellText } from './cells.ts';
import type { SpeciesName } from './species-named.ts';
import type { Table } from './table.ts';

/** A row that does not go in, with every reason. */
export interface RefusedRow {
  row: number;
  problems: { column: number | null; problem: Message }[];
}

/** The rows of a table as its choices make them: corrected, filled down, and without those that are left out. */
export interface Rows {
  /** Rows that may go in, by their number in the table. */
  used: readonly number[];
  leftOut: number;
  text(row: number, column: number): string;
  /** The first of a role; -1 where none has it. */
  columnOf(role: ColumnRole): number;
  columnsOf(role: ColumnRole): readonly number[];
  refuse(row: number, column: number | null, problem: Message): void;
  refused(): RefusedRow[];
  /** Lists a name for the person, who has to say what it means where that `isAsked`. */
  nameSpecies(name: SpeciesName, isAsked: boolean): void;
  /** A name that nobody knows. */
  missPlace(name: string): void;
  /** Names of species, first those that were asked, and unknown ones of places; each with how many rows have it. */
  names(): { species: SpeciesName[]; places: MissedName[] };
}
export interface MissedName {
  name: string;
  rows: number;
}

export function rowsOf(table: Table, choices: ImportChoices): Rows {
  const { columns, headerRow, fixes } = choices;
  const fixed = new Map(fixes.map(({ row, column, text }) => [`${row} ${column}`, cellText(text)]));
  const leftOut = new Set(choices.leftOut);
  const hasFixes = fixed.size > 0;
  const own = (row: number, column: number): string =>
    (hasFixes ? fixed.get(`${row} ${column}`) : undefined) ?? table[row]?.[column] ?? '';
  const header = headerRow === null ? null : JSON.stringify(table[headerRow]);
  const used: number[] = [];
  /** Of columns that are filled down: the row whose cell holds, for each row. */
  const filled = new Map<number, Int32Array>();
  for (const [column, { fillDown }] of columns.entries()) {
    if (fillDown) filled.set(column, new Int32Array(table.length).fill(-1));
  }
  let left = 0;
  const above = new Map<number, number>();
  for (let row = (headerRow ?? -1) + 1; row < table.length; row++) {
    const cells = table[row]!;
    if (cells.every((cell) => cell === '') && !(hasFixes && columns.some((_, at) => own(row, at) !== '')))
      continue;
    // Tables that were put together have the names of the columns again.
    if (header !== null && JSON.stringify(cells) === header) continue;
    for (const [column, source] of filled) {
      if (own(row, column) !== '') above.set(column, row);
      source[row] = above.get(column) ?? row;
    }
    if (leftOut.has(row)) left++;
    else used.push(row);
  }
  const byRole = new Map<ColumnRole, number[]>();
  for (const [column, { role }] of columns.entries()) {
    byRole.set(role, [...(byRole.get(role) ?? []), column]);
  }
  const refused = new Map<number, RefusedRow>();
  const asked: SpeciesName[] = [];
  const taken: SpeciesName[] = [];
  const missedPlaces = new Map<string, MissedName>();
  const sorted = <N extends MissedName>(names: Iterable<N>): N[] =>
    [...names].sort((a, b) => b.rows - a.rows);
  return {
    used,
    leftOut: left,
    text: (row, column) => own(filled.get(column)?.[row] ?? row, column),
    columnOf: (role) => byRole.get(role)?.[0] ?? -1,
    columnsOf: (role) => byRole.get(role) ?? [],
    refuse: (row, column, problem) => {
      const known = refused.get(row);
      if (known) known.problems.push({ column, problem });
      else refused.set(row, { row, problems: [{ column, problem }] });
    },
    refused: () => [...refused.values()].sort((a, b) => a.row - b.row),
    nameSpecies: (name, isAsked) => (isAsked ? asked : taken).push(name),
    missPlace: (name) => {
      const known = missedPlaces.get(nameKey(name));
      if (known) known.rows++;
      else missedPlaces.set(nameKey(name), { name, rows: 1 });
    },
    names: () => ({
      species: [...sorted(asked), ...sorted(taken)],
      places: sorted(missedPlaces.values()),
    }),
  };
}
