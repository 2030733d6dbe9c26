import {
  type ColumnChoice,
  type ColumnRole,
  dayRoles,
  type ImportKind,
  isDatedRole,
} from '../contract/import.ts';
import { dayIn, isBlank } from './cells.ts';
import { rolesFor, withReadingsOfMean } from './column-roles.ts';
import { unitFor } from './column-units.ts';
import { orderOfDates, ordersOf } from './date-orders.ts';
import { guessHeaderRow, headTexts } from './header-row.ts';
import { type HeaderMeaning, meaningOf } from './headers.ts';
import { ownRoles } from './own-export.ts';
import { type Reader, SAMPLE_ROWS, type Table } from './table.ts';

/** What was guessed of a table. */
export interface GuessedTable {
  kind: ImportKind;
  headerRow: number | null;
  decimalMark: '.' | ',';
  columns: ColumnChoice[];
}

/** A column with this part of blank cells may leave out what is as above. */
const MANY_BLANK = 0.4;

/** Whether decimals follow a comma: by the numbers of the table that can be nothing else. */
export function guessDecimalMark(table: Table): '.' | ',' {
  let commas = 0;
  let points = 0;
  for (const row of table.slice(0, SAMPLE_ROWS)) {
    for (const cell of row) {
      if (/^[-−]?\d+,(\d{1,2}|\d{4,})\s*(%|\D{0,3}$)/.test(cell)) commas++;
      else if (/^[-−]?\d+\.(\d{1,2}|\d{4,})\s*(%|\D{0,3}$)/.test(cell)) points++;
    }
  }
  return commas > points ? ',' : '.';
}

/** What the columns of a table hold, by their names and what is in them. */
export function guessTable(table: Table, reader: Reader): GuessedTable {
  const headerRow = guessHeaderRow(table, reader.today);
  return guessColumns(table, headerRow, guessDecimalMark(table), null, reader);
}

/** The same where a person chose the header, the decimal mark or the kind. */
export function guessColumns(
  table: Table,
  headerRow: number | null,
  decimalMark: '.' | ',',
  chosenKind: ImportKind | null,
  reader: Reader,
): GuessedTable {
  const { today } = reader;
  const header = headTexts(table, headerRow, today);
  const width = Math.max(0, ...table.slice(0, SAMPLE_ROWS).map((row) => row.length));
  const body = table.slice((headerRow ?? -1) + 1, (headerRow ?? -1) + 1 + SAMPLE_ROWS);
  const cellsOf = Array.from({ length: width }, (_, column) => body.map((row) => row[column] ?? ''));
  const filledOf = cellsOf.map((cells) => cells.filter((cell) => !isBlank(cell)));
  const meanings = cellsOf.map((_, column) => meaningOf(header[column] ?? '', today));
  const own = chosenKind === null || chosenKind === 'boards' ? ownRoles(header) : null;
  const kind = chosenKind ?? (own ? 'boards' : guessKind(meanings));
  const isNamed = (column: number): boolean => (header[column] ?? '') !== '';
  const named = own
    ? cellsOf.map((_, column) => own[column] ?? 'unused')
    : rolesFor(kind, meanings, isNamed, filledOf, decimalMark, reader);
  const byAll = withReadingsOfMean(named, meanings, filledOf, decimalMark);
  // An average beside the readings that it is of is no further reading, and neither is what was corrected of them.
  const readings = byAll.flatMap((role, column) => (role === 'reading' ? [meanings[column]!] : []));
  const isFurther = ({ depth, isRaw, dateText }: HeaderMeaning): boolean =>
    (depth === 'average' && readings.some((other) => other.depth !== 'average')) ||
    (!isRaw && dateText === null && readings.some((other) => other.isRaw));
  const roles = byAll.map((role, column) =>
    role === 'reading' && isFurther(meanings[column]!) ? 'unused' : role,
  );
  const dated = roles.flatMap((role, column) => (dayRoles.includes(role) ? [column] : []));
  const orders = ordersOf(new Map(dated.map((column) => [column, filledOf[column] ?? []])), reader.order);
  const datedHeaders = meanings.flatMap(({ dateText }) => dateText ?? []);
  const headerOrder = orderOfDates(datedHeaders, reader.order).order;
  // A scale's unit is often over the first of its weights alone.
  const weightUnit =
    meanings.find(({ unit }, column) => isWeight(roles[column]) && unit !== null)?.unit ?? null;
  /** Whether a column has something where a visit begins, and nowhere else: it holds for the whole visit. */
  const isOfVisits = (column: number): boolean =>
    dated.some((day) => {
      if (roles[day] !== 'day') return false;
      const days = cellsOf[day] ?? [];
      return (
        isLeftBlank(days, body) &&
        days.every((cell, row) => isBlank(cell) === isBlank(cellsOf[column]![row]!))
      );
    });
  const columns = roles.map((role, column): ColumnChoice => {
    const { depth, dateText, unit: named } = meanings[column]!;
    const unit = named ?? (isWeight(role) ? weightUnit : null);
    return {
      role,
      unit: unitFor(role, unit, filledOf[column] ?? [], decimalMark, reader.units),
      order: orders.get(column) ?? null,
      depth: role === 'reading' && depth !== 'average' ? depth : null,
      on: isDatedRole(role) && dateText !== null ? (dayIn(dateText, headerOrder, today)?.day ?? null) : null,
      fillDown:
        (FILLED_DOWN.includes(role) && isLeftBlank(cellsOf[column] ?? [], body)) ||
        (role === 'wood-temp' && isOfVisits(column)),
    };
  });
  return { kind, headerRow, decimalMark, columns };
}

const isWeight = (role: ColumnRole | undefined): boolean => role === 'wet-weight' || role === 'dry-weight';

/** What is often written once for the rows below. */
const FILLED_DOWN: readonly ColumnRole[] = [
  'code',
  'species',
  'stack',
  'place',
  'day',
  'log',
  'piece',
  'month',
];

/** Whether cells are blank where they are as above: the first is not, and many of rows with something else are. */
function isLeftBlank(cells: readonly string[], body: Table): boolean {
  const used = cells.filter((_, index) => body[index]?.some((cell) => cell !== ''));
  const blank = used.filter((cell) => cell === '').length;
  return used.length > 0 && used[0] !== '' && blank / used.length >= MANY_BLANK;
}

function guessKind(meanings: readonly HeaderMeaning[]): ImportKind {
  const has = (...roles: ColumnRole[]) => roles.some((role) => meanings.some((each) => each.role === role));
  if (has('wet-weight') && has('dry-weight')) return 'oven';
  const isAir = has('humidity') && !has('reading', 'thickness', 'species');
  return isAir ? 'air' : 'boards';
}
