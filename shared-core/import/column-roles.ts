import {
  type ColumnRole,
  canHave,
  type ImportKind,
  repeatedRoles,
  rolesOfReadings,
} from '../contract/import.ts';
import type { Species } from '../wood/species/species.ts';
import { isBlank, numberIn } from './cells.ts';
import { areDates } from './date-orders.ts';
import type { HeaderMeaning } from './headers.ts';
import { speciesNamed } from './species-named.ts';
import { MOST_OF, type Reader } from './table.ts';

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

export function rolesFor(
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

/**
 * Where nothing says whose the rows are, and the only column of readings is their average, what it can be the average of
 * are readings, under whatever names: "Date, C1, C2, C3, Mean".
 */
export function withReadingsOfMean(
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
