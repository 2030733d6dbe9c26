import { type ColumnRole, canHave } from '../contract/import.ts';
import { importing } from '../words/en/import.ts';
import { dayIn, isBlank } from './cells.ts';
import { guessTable } from './guess-columns.ts';
import { headTexts } from './header-row.ts';
import { meaningOf } from './headers.ts';
import { speciesNamed } from './species-named.ts';
import type { Reader, Table } from './table.ts';
import { isTotal } from './totals.ts';

/** What a line over other lines can say of them. */
type Said = 'stack' | 'place' | 'species' | 'thickness' | 'log' | 'day';
/** What is said, by its kind; `unknown` is a text that names nothing known. */
type Heading = Partial<Record<Said | 'unknown', string>>;

const SAID: readonly Said[] = ['stack', 'place', 'species', 'thickness', 'log', 'day'];
const isSaid = (role: ColumnRole | null): role is Said => SAID.some((each) => each === role);

/** "Stack: 3", "Species:". */
const LABEL = /^(?<label>[^:]{2,30}):\s*(?<value>.*)$/;
/** "Stack 3", "Pile North": what follows the word is a number or a name. "Lot of rain" is neither. */
const NAMED = /^(?<word>\p{L}+)[\s#:.–-]+(?=[\d\p{Lu}])/u;
/** "8/4 walnut", "walnut 50 mm". */
const WITH_THICKNESS =
  /^(?:(?<first>\d+\/4|\d+ ?mm)\s+(?<name>\p{L}.*)|(?<nameFirst>\p{L}.*?)[\s,]+(?<last>\d+\/4|\d+ ?mm))$/u;
/** No blank, which would mean the same as the cell above. */
const NOTHING_SAID = '–';
/** A column with so many cells filled is no place for what stands above its lines. */
const MOSTLY = 0.6;

/**
 * The table with what lines of one cell say of the lines below them in columns: the species, the stack, the day. Such
 * lines stand where a spreadsheet has merged cells. A line that says something of all lines may stand over the header.
 * The lines keep their numbers. Common practice, no source.
 */
export function withHeadings(table: Table, reader: Reader): Table {
  const { headerRow, kind, columns } = guessTable(table, reader);
  if (headerRow === null || columns.length < 2) return table;
  const codeColumn = columns.findIndex(({ role }) => role === 'code' || role === 'piece');
  const body = table.slice(headerRow + 1).filter((row) => filledOf(row).length > 1);
  const isMostlyFilled = (column: number): boolean =>
    body.filter((row) => row[column] !== '').length >= MOSTLY * body.length;
  const codeShapes = new Set(body.map((row) => shapeOf(row[codeColumn] ?? '')));
  const lastOfLine = Math.max(codeColumn, 0);

  const found = new Map<number, Heading>();
  for (const [index, row] of table.entries()) {
    if (index === headerRow) continue;
    const filled = filledOf(row);
    const labelled =
      filled.length > 0
        ? labelledIn(
            filled.map((column) => row[column]!),
            index < headerRow,
          )
        : null;
    if (labelled) found.set(index, labelled);
    const [column] = filled;
    if (labelled || column === undefined || filled.length > 1 || column > lastOfLine) continue;
    const text = row[column]!;
    if (isBlank(text) || isTotal(text)) continue;
    if (column === codeColumn && codeShapes.has(shapeOf(text))) continue;
    const said = saidBy(text, index < headerRow);
    if (said) found.set(index, said);
  }

  function labelledIn(cells: readonly string[], isOverHeader: boolean): Heading | null {
    const heading: Heading = {};
    for (let at = 0; at < cells.length; at++) {
      const bare = isOverHeader ? { label: cells[at]!, value: '' } : {};
      const { label = '', value }: { label?: string; value?: string } =
        LABEL.exec(cells[at]!)?.groups ?? bare;
      const { role } = meaningOf(label, reader.today);
      if (!isSaid(role)) return null;
      const text = value === '' ? cells[++at] : value;
      if (text === undefined) return null;
      heading[role] = text;
    }
    return heading;
  }

  function saidBy(text: string, isOverHeader: boolean): Heading | null {
    if (dayIn(text, reader.order, reader.today) ?? dayIn(text, 'ymd', reader.today)) return { day: text };
    if (speciesNamed(text, reader.species) !== null) return { species: text };
    const { first, name, nameFirst, last } = WITH_THICKNESS.exec(text)?.groups ?? {};
    const species = name ?? nameFirst;
    const thickness = first ?? last;
    if (species !== undefined && thickness !== undefined) {
      if (speciesNamed(species, reader.species) !== null) return { species, thickness };
      return isOverHeader ? null : { unknown: species, thickness };
    }
    const { role } = meaningOf(NAMED.exec(text)?.groups?.word ?? '', reader.today);
    if ((role === 'stack' || role === 'place' || role === 'log') && text.length <= (isOverHeader ? 20 : 60))
      return { [role]: text };
    return isOverHeader ? null : { unknown: text };
  }

  // One over all lines is the species, by a name that nobody knows yet, or else the stack. One among the lines may be a
  // note, and stays as it is.
  const firstLine = table.findIndex(
    (row, at) => at > headerRow && !found.has(at) && filledOf(row).length > 1,
  );
  const isOverAll = [...found].some(([at, { unknown }]) => unknown !== undefined && at < firstLine);
  const isSaidOf = (said: Said): boolean =>
    columns.some(({ role }) => role === said) ||
    [...found.values()].some((heading) => heading[said] !== undefined);
  const candidates = kind === 'air' ? (['place'] as const) : (['species', 'stack'] as const);
  const meant = candidates.find((said) => !isSaidOf(said));
  // Where no other line has a board's ID, those are the boards.
  const isMeant = isOverAll && (kind === 'air' || body.some((row) => (row[codeColumn] ?? '') !== ''));
  for (const [at, { unknown, ...known }] of found) {
    if (unknown === undefined) continue;
    if (isMeant && meant) found.set(at, { ...known, [meant]: unknown });
    else found.delete(at);
  }

  const columnOf = (said: Said): number => columns.findIndex(({ role }) => role === said);
  // What each line has for itself goes before what stands above it.
  const used = SAID.filter(
    (said) =>
      canHave(kind, said) &&
      [...found.values()].some((heading) => heading[said] !== undefined) &&
      !(columnOf(said) >= 0 && isMostlyFilled(columnOf(said))),
  );
  const isUsed = (heading: Heading): boolean => used.some((said) => heading[said] !== undefined);
  if (used.length === 0) return table;

  const added = used.filter((said) => columnOf(said) < 0);
  const header = JSON.stringify(table[headerRow]);
  const isOfTwoRows = JSON.stringify(headTexts(table, headerRow, reader.today)) !== header;
  const names = added.map((said) => importing[`import.role.${said}`]);
  /** In the order they first appear: a later kind is about a part of the earlier one, and ends with it. */
  const order: Said[] = [];
  let now: Heading = {};
  return table.map((row, index) => {
    const heading = found.get(index);
    if (heading && isUsed(heading)) {
      for (const said of used) {
        if (heading[said] === undefined) continue;
        if (!order.includes(said)) order.push(said);
        for (const part of order.slice(order.indexOf(said) + 1)) delete now[part];
      }
      now = { ...now, ...heading };
      return [...row.map(() => ''), ...added.map(() => '')];
    }
    // Of a header of two rows, the upper one has the names as well.
    if (JSON.stringify(row) === header || (isOfTwoRows && index === headerRow - 1)) return [...row, ...names];
    const isLine = index > headerRow && filledOf(row).length > 1;
    if (!isLine) return [...row, ...added.map(() => '')];
    const own = row.map((cell, column) => {
      const said = used.find((each) => columnOf(each) === column);
      return cell === '' && said !== undefined ? (now[said] ?? '') : cell;
    });
    return [...own, ...added.map((said) => now[said] ?? NOTHING_SAID)];
  });
}

const filledOf = (row: readonly string[]): number[] =>
  row.flatMap((cell, column) => (cell === '' ? [] : [column]));

/** "A-17" and "B-204" have the same. */
const shapeOf = (text: string): string => text.replaceAll(/\d+/g, '9').replaceAll(/\p{L}+/gu, 'a');
