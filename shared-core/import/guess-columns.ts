import {
  type ColumnChoice,
  type ColumnRole,
  type ColumnUnit,
  canHave,
  type DayOrder,
  dayRoles,
  type ImportKind,
  isDatedRole,
  repeatedRoles,
  rolesOfReadings,
  unitsOf,
} from '../contract/import.ts';
import { isWithoutNumber } from '../probing/readings/beyond-scale.ts';
import type { DisplayUnits } from '../units/length.ts';
import type { Species } from '../wood/species/species.ts';
import { importing } from '../words/en/import.ts';
import { dayIn, figuresOf, isBlank, isSerialDay, numberIn } from './cells.ts';
import {
  dateTextIn,
  depthNamed,
  factsOfBoards,
  type HeaderMeaning,
  isHeaderLike,
  meaningOf,
  writtenOut,
} from './headers.ts';
import { ownRoles } from './own-export.ts';
import { speciesNamed } from './species-named.ts';

/** The rows of a table as texts, each as long as the table is wide. */
export type Table = readonly (readonly string[])[];

/** For whom a table is read. */
export interface Reader {
  /** Local day. */
  today: string;
  units: DisplayUnits;
  /** The order in which the person writes a date in figures. */
  order: DayOrder;
  species: readonly Species[];
}

/** What was guessed of a table. */
export interface GuessedTable {
  kind: ImportKind;
  headerRow: number | null;
  decimalMark: '.' | ',';
  columns: ColumnChoice[];
}

/** A table may begin with its title and a few lines about it. Common practice, no source. */
const MOST_LINES_BEFORE = 20;
/** So many dates of a table that is turned become columns. */
const MOST_ACROSS = 200;
/** So many rows tell what a column holds. */
const SAMPLE_ROWS = 400;
/** At least this part of a column's cells must be what it is guessed to hold. */
const MOST_OF = 0.7;
/** A column with this part of blank cells may leave out what is as above. */
const MANY_BLANK = 0.4;

/** The row with the names of the columns; null where none of the first looks like it. */
export function guessHeaderRow(table: Table, today: string): number | null {
  let best: number | null = null;
  let most = 0;
  for (const [index, row] of table.slice(0, MOST_LINES_BEFORE).entries()) {
    const filled = row.filter((cell) => cell !== '');
    const named = filled.filter((cell) => isHeaderLike(cell, today)).length;
    const isRow = filled.length > 1 || row.length === 1;
    if (isRow && named > most && named >= filled.length / 3) {
      best = index;
      most = named;
    }
  }
  if (best !== null) {
    const below = table[best + 1];
    return below && isUnderDates(below, table[best]!, today) ? best + 1 : best;
  }
  // Words over numbers are names, whatever they say.
  const [first, second] = table.slice(0, 2);
  const numbers = (row: readonly string[] | undefined) => row?.filter((cell) => /^\d/.test(cell)).length ?? 0;
  const isNames = first?.every((cell) => /\p{L}/u.test(cell)) ?? false;
  return isNames && numbers(first) === 0 && numbers(second) > 0 ? 0 : null;
}

/**
 * What the header says of each column. Over a row of depths or readings, the row above may have dates that hold for the columns to
 * their right, and the names of the other columns. Common practice, no source.
 */
export function headTexts(table: Table, headerRow: number | null, today: string): readonly string[] {
  if (headerRow === null) return [];
  const own = table[headerRow] ?? [];
  const above = table[headerRow - 1];
  if (!above || !isUnderDates(own, above, today)) return own;
  let date = '';
  return own.map((cell, column) => {
    const over = above[column] ?? '';
    if (over !== '') date = dateTextIn(over, today) === null ? '' : over;
    if (cell === '' || date === '') return cell === '' ? over : cell;
    return withDate(cell, date);
  });
}

/** What is of a day, as the name of a column: "Reading 2 5/1/2025" where it counts readings. */
const withDate = (label: string, date: string): string =>
  `${IS_COUNTED.test(label) ? importing['import.role.reading'] : ''} ${writtenOut(label)} ${date}`.trim();

/** The first, second and third reading of a day. */
const IS_COUNTED = /^[1-9]$/;

/** Whether a text says what is read on a day: how deep, or another thing of readings. */
function isOfReading(text: string, today: string): boolean {
  const { role } = meaningOf(text, today);
  const isNamed = depthNamed(writtenOut(text)) !== null || role === 'reading';
  return isNamed || (role !== null && rolesOfReadings.includes(role));
}

/**
 * Whether the filled cells of a row under dates are depths, numbers that count readings from 1, or else what is of
 * readings; what is left of the dates may be any other name.
 */
function isUnderDates(row: readonly string[], above: readonly string[], today: string): boolean {
  const isDate = (column: number): boolean => dateTextIn(above[column] ?? '', today) !== null;
  const firstDate = above.findIndex((_, column) => isDate(column));
  const isDated = row.some((cell, column) => cell !== '' && isDate(column));
  const isCounted = (cell: string, column: number): boolean =>
    IS_COUNTED.test(cell) && Number(cell) === (isDate(column) ? 1 : Number(row[column - 1]) + 1);
  return (
    isDated &&
    row.every(
      (cell, column) =>
        cell === '' ||
        cell === above[column] ||
        isOfReading(cell, today) ||
        (column < firstDate ? isHeaderLike(cell, today) : isCounted(cell, column)),
    )
  );
}

/**
 * The table with its boards down where it has them across: dates in its first column, and in the other columns numbers
 * under names that nobody knows. Null for another table.
 */
export function turnedTable(table: Table, reader: Reader): Table | null {
  return turnedWithNames(table, reader) ?? turnedWithDates(table, reader);
}

/** What a line over the dates can say of each board. */
const SAID_OF_BOARDS: readonly ColumnRole[] = ['code', 'day', 'log', ...factsOfBoards];

/**
 * Where lines over the dates say what each board is: "Board, A1, A2", "Species, walnut, cherry". Each line below is of a
 * date, which may stand once for several of them, and may say how deep, or be the temperature: "5/1/2025, Shell".
 */
function turnedWithNames(table: Table, reader: Reader): Table | null {
  const { today } = reader;
  const lines = table.filter((row) => row.some((cell) => cell !== ''));
  // Looking for a date is cheap, and most cells have none.
  const dateOf = (text: string): string | null => {
    const dateText = dateTextIn(text, today);
    return dateText !== null && isHeaderLike(text, today) ? dateText : null;
  };
  const firstDate = lines.findIndex(([first = '']) => dateOf(first) !== null);
  const roleOf = ([first = '']: readonly string[]) => meaningOf(first, today).role;
  const isSaid = (row: readonly string[]): boolean => {
    const role = roleOf(row);
    const boards = row.slice(1).filter((cell) => cell !== '').length;
    return role !== null && SAID_OF_BOARDS.includes(role) && boards > 1;
  };
  const firstSaid = lines.slice(0, Math.max(firstDate, 0)).findLastIndex((row) => !isSaid(row)) + 1;
  const said = lines.slice(firstSaid, Math.max(firstDate, 0));
  const body = lines.slice(firstDate);
  const ids = said.filter((row) => roleOf(row) === 'code' || roleOf(row) === 'day');
  const [idRow] = ids;
  if (said.length < 2 || ids.length !== 1 || !idRow || said.length + body.length > MOST_ACROSS) return null;
  if (idRow.slice(1).some((cell) => isHeaderLike(cell, today))) return null;
  const decimalMark = guessDecimalMark(table);
  const isValue = (cell: string): boolean =>
    isBlank(cell) || isWithoutNumber(cell) || numberIn(cell, decimalMark) !== null;
  // The second column goes on with the names of the lines where no board is over it.
  const named = said.every((row) => (row[1] ?? '') === '') ? 2 : 1;
  let date: string | null = null;
  const dated: string[][] = [];
  for (const row of body) {
    const [first = '', ...more] = row.slice(0, named);
    const ownDate = dateOf(first);
    date = ownDate ?? date;
    const own = ownDate === null ? first : first.replace(ownDate, '').trim();
    const label = [own, ...more].filter((text) => text !== '').join(' ');
    const cells = row.slice(named);
    if (date === null || !cells.every(isValue) || !(label === '' || isOfReading(label, today))) return null;
    // A date may stand alone, above the lines with its readings.
    if (cells.some((cell) => cell !== '')) dated.push([withDate(label, date), ...cells]);
  }
  const across = [...said.map((row) => [row[0] ?? '', ...row.slice(named)]), ...dated];
  return [...idRow.slice(named - 1).keys()].map((column) =>
    across.map((row, at) =>
      column === 0 && at === said.indexOf(idRow) ? importing['import.role.code'] : (row[column] ?? ''),
    ),
  );
}

/** Where the first line has the boards' IDs, and each other line a date and its readings. */
function turnedWithDates(table: Table, reader: Reader): Table | null {
  const { headerRow, kind, columns, decimalMark } = guessTable(table, reader);
  if (kind !== 'boards' || headerRow === null || columns[0]?.role !== 'day') return null;
  const body = table.slice(headerRow + 1);
  const heads = table[headerRow] ?? [];
  const isBoard = columns.map(({ role }, column) => {
    const cells = body.map((row) => row[column] ?? '').filter((cell) => !isBlank(cell));
    // "A-1" over readings is a board, which roleByContent may take for the column of the boards' IDs.
    const meaning = meaningOf(heads[column] ?? '', reader.today);
    const isFree = (role === 'unused' && meaning.depth !== 'average') || meaning.role === null;
    return isFree && cells.length > 0 && cells.every((cell) => numberIn(cell, decimalMark) !== null);
  });
  const across = table.slice(headerRow);
  if (!isBoard.slice(1).every(Boolean) || isBoard.length < 3 || across.length > MOST_ACROSS) return null;
  // What is over the dates says nothing of the boards that come below it.
  return columns.map((_, column) => across.map((row, at) => (column + at === 0 ? '' : (row[column] ?? ''))));
}

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

/** What dates of one column say of the order of their figures. */
interface OrderOfDates {
  order: DayOrder;
  /** What proves it; a person's own order holds without a proof, and one date against it may be mistyped. */
  proof: 'own' | 'one-date' | 'dates';
}

/** With so many other dates in the person's own order, a single one against it is mistyped. Common practice, no source. */
const MANY_DATES = 3;

/** The order of dates in figures: where the column has days above 12, by those; else the person's own. */
function orderOfDates(cells: readonly string[], own: DayOrder): OrderOfDates {
  const dates = cells.map(figuresOf).filter((date) => date !== null);
  if (dates.length === 0) {
    const serial = cells.filter(
      (cell) => /^\d{5}([.,]\d+)?$/.test(cell) && isSerialDay(Number.parseFloat(cell)),
    );
    return serial.length > cells.length / 2
      ? { order: 'serial', proof: 'dates' }
      : { order: own, proof: 'own' };
  }
  if (dates.every(([year]) => year.length === 4)) return { order: 'ymd', proof: 'dates' };
  const above12 = (part: 0 | 1): Set<string> =>
    new Set(
      dates
        .filter((date) => date[part].length <= 2 && Number(date[part]) > 12)
        .map((date) => date.slice(0, 2).join('/')),
    );
  const [dayFirst, daySecond] = [above12(0).size, above12(1).size];
  if (dayFirst > 0 !== daySecond > 0) {
    const order = dayFirst > 0 ? 'dmy' : 'mdy';
    const isAgainstOwn = (own === 'mdy' || own === 'dmy') && own !== order;
    const others = new Set(dates.map((date) => date.slice(0, 2).join('/'))).size - 1;
    if (!isAgainstOwn || others === 0 || dayFirst + daySecond > 1) return { order, proof: 'dates' };
    return others < MANY_DATES ? { order, proof: 'one-date' } : { order: own, proof: 'own' };
  }
  if (own === 'mdy' || own === 'dmy') return { order: own, proof: 'own' };
  // Points part figures where the day comes first. Common practice, no source.
  return { order: cells.some((cell) => /^\d{1,2}\.\d/.test(cell)) ? 'dmy' : 'mdy', proof: 'own' };
}

/**
 * The order of dates for each column of dates. One table has one order where no column proves another. Null where a person
 * has to choose it: a single date of few is against their own order, or one column is while another is not.
 */
function ordersOf(
  columns: ReadonlyMap<number, readonly string[]>,
  own: DayOrder,
): ReadonlyMap<number, DayOrder | null> {
  const each = new Map([...columns].map(([column, cells]) => [column, orderOfDates(cells, own)]));
  const found = [...each.values()];
  const isInFigures = ({ order }: OrderOfDates) => order === 'mdy' || order === 'dmy';
  const proven = new Set(
    found.filter((of) => of.proof === 'dates' && isInFigures(of)).map(({ order }) => order),
  );
  const [shared] = proven.size === 1 ? proven : [];
  const isOpen = shared === undefined && found.some(({ proof }) => proof === 'one-date');
  return new Map(
    [...each].map(([column, of]) => {
      if (!isInFigures(of)) return [column, of.order];
      if (of.proof === 'dates') return [column, proven.size > 1 && of.order !== own ? null : of.order];
      return [column, isOpen ? null : (shared ?? of.order)];
    }),
  );
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
  const columns = roles.map((role, column): ColumnChoice => {
    const { depth, dateText, unit: named } = meanings[column]!;
    const unit = named ?? (isWeight(role) ? weightUnit : null);
    return {
      role,
      unit: unitFor(role, unit, filledOf[column] ?? [], decimalMark, reader.units),
      order: orders.get(column) ?? null,
      depth: role === 'reading' && depth !== 'average' ? depth : null,
      on: isDatedRole(role) && dateText !== null ? (dayIn(dateText, headerOrder, today)?.day ?? null) : null,
      fillDown: FILLED_DOWN.includes(role) && isLeftBlank(cellsOf[column] ?? [], body),
    };
  });
  return { kind, headerRow, decimalMark, columns };
}

/**
 * Where nothing says whose the rows are, and the only column of readings is their average, what it can be the average of
 * are readings, under whatever names: "Date, C1, C2, C3, Mean".
 */
function withReadingsOfMean(
  roles: readonly ColumnRole[],
  meanings: readonly HeaderMeaning[],
  filledOf: readonly (readonly string[])[],
  decimalMark: '.' | ',',
): ColumnRole[] {
  const readings = roles.flatMap((role, column) => (role === 'reading' ? [meanings[column]!] : []));
  const isMeanAlone = readings.length === 1 && readings[0]!.depth === 'average';
  if (!isMeanAlone || roles.includes('code')) return [...roles];
  return roles.map((role, column) =>
    role === 'unused' &&
    meanings[column]!.role === null &&
    areReadingsLike(filledOf[column] ?? [], decimalMark, true)
      ? 'reading'
      : role,
  );
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

/** What a role is called in a table of another kind. */
function roleIn(kind: ImportKind, role: ColumnRole | null): ColumnRole | null {
  if (kind === 'oven' && role === 'code') return 'piece';
  if (kind === 'boards' && role === 'piece') return 'code';
  if (kind === 'air' && role === 'wood-temp') return 'air-temp';
  return role !== null && canHave(kind, role) ? role : null;
}

/**
 * The columns of a role that go with each column of readings, where the role stands once for each of them: "Date, MC,
 * Date, MC", or "MC, Temp, MC, Temp" under their dates. Null where it does not.
 */
export function ofEachReading(
  columns: readonly number[],
  readings: readonly number[],
): ((reading: number) => number) | null {
  const isBetween = (from: number, to: number) => readings.some((reading) => reading > from && reading < to);
  const [first, ...others] = columns;
  if (first === undefined || !others.every((column, at) => isBetween(columns[at]!, column))) return null;
  const goesBefore = readings.every((reading) => reading > first);
  return goesBefore
    ? (reading) => columns.findLast((column) => column < reading) ?? first
    : (reading) => columns.find((column) => column > reading) ?? columns.at(-1)!;
}

function rolesFor(
  kind: ImportKind,
  meanings: readonly HeaderMeaning[],
  isNamed: (column: number) => boolean,
  filledOf: readonly (readonly string[])[],
  decimalMark: '.' | ',',
  reader: Reader,
): ColumnRole[] {
  const taken = new Set<ColumnRole>();
  /** Since a column of readings came. */
  const takenSince = new Set<ColumnRole>();
  function take(role: ColumnRole | null): ColumnRole | null {
    const isOfReading =
      role !== null &&
      (kind === 'boards' ? rolesOfReadings.includes(role) : kind === 'oven' && role === 'day');
    const isOnce = role === 'code' || (role !== null && !repeatedRoles.includes(role));
    if (role === null || (isOnce && (isOfReading ? takenSince : taken).has(role))) return null;
    if (role === 'reading' || role === 'dry-weight') takenSince.clear();
    else takenSince.add(role);
    taken.add(role);
    return role;
  }
  /** "Tag" may be over a label's text, or a German's dates. */
  const isOfDates = (column: number): boolean => areDates(filledOf[column] ?? [], reader);
  const byName = meanings.map(({ role: named, dateText }, column) => {
    const role = named === 'code' && isOfDates(column) ? 'day' : named;
    // "Meter" may be over its values, or over its name.
    if (role === 'reading' && !beginWithDigits(filledOf[column] ?? [])) return null;
    // The temperature of a day goes with the readings of that day, wherever it stands.
    return role === 'wood-temp' && dateText !== null && kind === 'boards' ? role : take(roleIn(kind, role));
  });
  return byName.map((role, column) => {
    if (role !== null) return role;
    // A name that says something else, or the same once more, is not guessed at.
    if (meanings[column]!.role !== null) return 'unused';
    const meant = roleByContent(filledOf[column] ?? [], decimalMark, reader);
    // Numbers under a name that says nothing of moisture can be anything.
    if (meant === 'reading' && isNamed(column)) return 'unused';
    return meant === null || (meant !== 'reading' && taken.has(meant))
      ? 'unused'
      : (take(roleIn(kind, meant)) ?? 'unused');
  });
}

function areDates(cells: readonly string[], { order, today }: Pick<Reader, 'order' | 'today'>): boolean {
  const dateOrder = orderOfDates(cells, order).order;
  const dates = cells.filter((cell) => dayIn(cell, dateOrder, today) !== null);
  return dateOrder !== 'serial' && cells.length > 0 && dates.length >= MOST_OF * cells.length;
}

/** Whether most of the cells, or none, begin with a number. */
const beginWithDigits = (cells: readonly string[]): boolean =>
  cells.filter((cell) => /^[^\p{L}]*\d/u.test(cell)).length >= MOST_OF * cells.length;

/** Whether a cell is as a moisture content is written. */
const isMcLike = (cell: string, decimalMark: '.' | ','): boolean => {
  const number = numberIn(cell, decimalMark);
  return number !== null && /[.,]\d/.test(cell) && number.value >= 4 && number.value <= 100;
};

/**
 * Whether cells of a column that is not imported look like readings all the same.
 *
 * @param hasReadings  of a table without any column of readings, whole numbers look like them as well
 */
export function areReadingsLike(
  cells: readonly string[],
  decimalMark: '.' | ',',
  hasReadings: boolean,
): boolean {
  const filled = cells.filter((cell) => !isBlank(cell));
  const isLike = (cell: string): boolean => {
    if (hasReadings || /[.,]\d/.test(cell)) return isMcLike(cell, decimalMark);
    const value = numberIn(cell, decimalMark)?.value ?? 0;
    return value >= 4 && value <= 100;
  };
  return filled.length > 0 && filled.filter(isLike).length >= MOST_OF * filled.length;
}

function roleByContent(
  cells: readonly string[],
  decimalMark: '.' | ',',
  { species, today, order }: Reader,
): ColumnRole | null {
  if (cells.length === 0) return null;
  const are = (holds: (cell: string) => boolean) => cells.filter(holds).length >= MOST_OF * cells.length;
  if (areDates(cells, { order, today })) return 'day';
  if (are((cell) => /^\d+\s*\/\s*4$/.test(cell))) return 'thickness';
  const names = [...new Set(cells)].slice(0, 40);
  const known = names.filter((name) => /\p{L}{3}/u.test(name) && meansSpecies(name, species)).length;
  if (known > 0 && known >= MOST_OF * names.length) return 'species';
  if (are((cell) => isMcLike(cell, decimalMark))) return 'reading';
  // Bare numbers that come again and again are no IDs.
  const distinct = new Set(cells).size;
  if (
    distinct > cells.length / (are((cell) => /^\d+$/.test(cell)) ? 2 : 20) &&
    are((cell) => /^#?[A-Za-z]{0,8}[-. /_]?\d{1,6}[A-Za-z]?$/.test(cell))
  ) {
    return 'code';
  }
  return null;
}

const meansSpecies = (name: string, species: readonly Species[]): boolean =>
  speciesNamed(name, species) !== null;

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

function unitFor(
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
