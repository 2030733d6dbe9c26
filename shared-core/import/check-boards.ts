import {
  answerFor,
  type ColumnChoice,
  type ColumnRole,
  type ColumnUnit,
  type ImportChoices,
  isOhmUnit,
  nameKey,
  rolesOfReadings,
} from '../contract/import.ts';
import { boardCodeSchema, MOST_NOTE_LETTERS } from '../contract/yard.ts';
import { isWithoutNumber } from '../probing/readings/beyond-scale.ts';
import { celsiusFromTemperature } from '../units/temperature.ts';
import { ohmsIn } from '../units/typed-ohms.ts';
import { type Message, message } from '../words/message.ts';
import { codeOf } from './board-id.ts';
import type { BoardsOfTable, KnownYard, RowOfBoard, TableReading } from './boards-of-table.ts';
import {
  type DayInCell,
  dayIn,
  isBlank,
  isWithoutYear,
  lengthIn,
  type NumberInCell,
  numberIn,
  numbersIn,
  timeIn,
  unitAt,
} from './cells.ts';
import { ofEachReading } from './column-roles.ts';
import { depthNamed, factsOfBoards, meaningOf } from './headers.ts';
import { oneOfEachBoard } from './one-of-each-board.ts';
import { firstRowsRead } from './row-read.ts';
import type { Rows } from './rows.ts';
import { rowsTwice } from './rows-twice.ts';
import { speciesReader } from './species-named.ts';
import { isTotal } from './totals.ts';
import { whyNoReading, whyTextIsNoReading } from './usable-reading.ts';

/** Wood that is probed is no warmer, °C; in Fahrenheit such a number is usual. Common practice, no source. */
const WARMEST_C = 50;
/** In a column that says which readings are excluded, these say that one is not. Common practice, no source. */
const NOT_EXCLUDED = /^(no|false|0|nein)$/i;
/** As long as a reason is that a person gives. */
const MOST_REASON_LETTERS = 200;
/** Columns whose names can stand before a line, where the table has more than one row of them. */
const NAMED_LINES: readonly ColumnRole[] = [...factsOfBoards, 'sawn-on', 'day', 'note', 'wood-temp'];
/** Whether the text where an ID should be is the name of its line, or its date: "Temp", "Species", "5/1/2025". */
function namesLine(text: string, today: string): boolean {
  if (/^\d{1,2}\/\d{1,2}\/\d{4}$/.test(text)) return true;
  // Beside its date, the name of a line has no numbers; nearly every ID has.
  const name = text.replace(/\d{1,4}[./-]\d{1,2}[./-]\d{2,4}/, '').trim();
  if (!/^\D{3,}$/.test(name)) return false;
  const { role } = meaningOf(text, today);
  return role !== null && NAMED_LINES.includes(role);
}
/** The parts of an ID as one. */
const codeTyped = (parts: readonly string[]): string => parts.filter((part) => !isBlank(part)).join(' ');
/** Those that come more than once. */
function repeated(codes: readonly (string | null)[]): Set<string> {
  const seen = new Set<string | null>();
  return new Set(codes.filter((code) => code !== null && seen.size === seen.add(code).size)) as Set<string>;
}
const noReading = (text: string) => message('import.no-reading', { cellTypedText: text });

/**
 * A table of boards, with readings or without: what goes in, and of each row that does not, why.
 *
 * @param isTurned  each row was a column, so that no two rows are of one board
 */
export function checkBoards(
  rows: Rows,
  choices: ImportChoices,
  yard: KnownYard,
  isTurned: boolean,
): BoardsOfTable {
  const speciesIn = speciesReader(rows, choices, yard.species);
  const writtenAs = new Map<string, string>();
  /** Cells in which the meter showed no number, by what is written there. */
  const withoutNumber = new Map<string, number>();
  const otherIds = new Map<string, { code: string; why: 'merged' | 'renamed' }>();
  const readingColumns = rows.columnsOf('reading');
  const onOf = (column: number): string | null => choices.columns[column]?.on ?? null;
  const undatedOf = (role: ColumnRole): number[] =>
    rows.columnsOf(role).filter((column) => onOf(column) === null);
  /** Columns of temperatures that are of one day. */
  const tempsOfDays = rows.columnsOf('wood-temp').filter((column) => onOf(column) !== null);
  const columnsFor = new Map(
    rolesOfReadings.map((role) => [role, ofEachReading(undatedOf(role), readingColumns)]),
  );
  const columnFor = (role: ColumnRole, reading: number): number =>
    columnsFor.get(role)?.(reading) ?? rows.columnOf(role);
  const codeColumns = rows.columnsOf('code');
  const codePartsOf = (row: number): string[] =>
    codeColumns.length > 0 ? codeColumns.map((column) => rows.text(row, column)) : [choices.boardCode];
  const twice = isTurned
    ? repeated(rows.used.map((row) => codeOf(codeTyped(codePartsOf(row)))))
    : new Set<string>();
  const byCode = new Map<string, RowOfBoard[]>();
  for (const row of rows.used) {
    const facts = readRow(row);
    if (facts === null) continue;
    const group = byCode.get(facts.code);
    if (group) group.push(facts);
    else byCode.set(facts.code, [facts]);
  }

  function readRow(row: number): RowOfBoard | null {
    const cell = (column: number) => rows.text(row, column);
    const { decimalMark } = choices;
    let isGood = true;
    const refuse = (column: number | null, problem: Message): null => {
      rows.refuse(row, column, problem);
      isGood = false;
      return null;
    };
    /** A column of a role, with what is in its cell; null where that is blank. */
    function of(
      role: ColumnChoice['role'],
      column = rows.columnOf(role),
    ): { column: number; choice: ColumnChoice; text: string } | null {
      const choice = choices.columns[column];
      if (!choice) return null;
      const text = cell(column);
      return isBlank(text) ? null : { column, choice, text };
    }
    /** What is too long is refused: cut, two names could be one. */
    const textOf = (role: ColumnChoice['role'], mostLetters: number): string | null => {
      const found = of(role);
      if (!found) return null;
      const { column, text } = found;
      return text.length <= mostLetters ? text : refuse(column, message('import.too-long', { mostLetters }));
    };

    /** What the columns of a role say; the one that goes with a column of readings answers for it. */
    function ofReading<T>(
      role: ColumnRole,
      read: (found: ReturnType<typeof of>) => T,
    ): (reading: number) => T {
      const said = new Map(undatedOf(role).map((column) => [column, read(of(role, column))]));
      const none = said.size === 0 ? read(null) : undefined;
      return (reading) => {
        const column = columnFor(role, reading);
        return said.has(column) ? (said.get(column) as T) : (none as T);
      };
    }

    const codeColumn = codeColumns[0] ?? null;
    const parts = codePartsOf(row);
    const typed = codeTyped(parts);
    if (typed === '') return refuse(codeColumn, message('import.no-code'));
    if (parts.some(isTotal)) return refuse(codeColumn, message('import.totals', { cellTypedText: typed }));
    if (namesLine(typed, yard.today))
      return refuse(codeColumn, message('import.names-line', { cellTypedText: typed }));
    const typedCode = codeOf(typed);
    if (typedCode === null || !boardCodeSchema.safeParse(typedCode).success) {
      return refuse(codeColumn, message('import.bad-code', { cellTypedText: typed }));
    }
    const other = writtenAs.get(typedCode) ?? typed;
    if (nameKey(other) !== nameKey(typed)) {
      return refuse(
        codeColumn,
        message('import.codes-clash', { cellTypedText: typed, otherTypedText: other, boardCode: typedCode }),
      );
    }
    if (twice.has(typedCode))
      return refuse(codeColumn, message('import.twice-turned', { boardCode: typedCode }));
    writtenAs.set(typedCode, typed);
    const known = yard.board(typedCode);
    const code = known?.code ?? typedCode;

    function length(found: ReturnType<typeof of>, leastMm: number, mostMm: number) {
      if (!found) return null;
      const { column, choice, text } = found;
      const read = lengthIn(text, choice.unit ?? 'mm', decimalMark);
      if (read === null) return refuse(column, message('import.no-length', { cellTypedText: text }));
      if (read.mm < leastMm || read.mm > mostMm) {
        return refuse(column, message('import.length-impossible', { cellTypedText: text, leastMm, mostMm }));
      }
      return read;
    }
    function day(found: ReturnType<typeof of>): Pick<DayInCell, 'day' | 'minutes'> | null {
      if (!found) return null;
      const { column, choice, text } = found;
      const written = dayIn(text, choice.order ?? 'ymd', yard.today);
      if (written === null) {
        const problem = isWithoutYear(text) ? 'import.no-year' : 'import.no-date';
        return refuse(column, message(problem, { cellTypedText: text }));
      }
      const { minutes, aheadMinutes } = written;
      const read =
        minutes === null || aheadMinutes === null
          ? written
          : yard.localOf({ day: written.day, minutes, aheadMinutes });
      if (read.day > yard.today || read.day < '1900-01-01') {
        return refuse(column, message('import.date-impossible', { givenOn: read.day }));
      }
      return read;
    }

    const speciesText = of('species');
    const speciesId = speciesText && speciesIn(speciesText.text);
    if (speciesText && speciesId === null)
      refuse(speciesText.column, message('import.species-unknown', { speciesName: speciesText.text }));
    const thickness = length(of('thickness'), 3, 400);
    const thicknessMm = thickness?.mm ?? known?.thicknessMm ?? null;
    const widthMm = length(of('width'), 10, 3000)?.mm ?? null;
    const lengthMm = length(of('length'), 50, 20_000)?.mm ?? null;
    const sawnOn = day(of('sawn-on'))?.day ?? null;
    const place = of('place');
    const placeName = place?.text ?? null;
    if (place && !isPlaceKnown(place.text)) {
      rows.missPlace(place.text);
      refuse(place.column, message('import.place-unknown', { placeName: place.text }));
    }
    const layerCell = of('layer');
    const layer = layerCell && (numberIn(layerCell.text, decimalMark)?.value ?? null);
    if (layerCell && (layer === null || !Number.isInteger(layer) || layer < 1 || layer > 100))
      refuse(layerCell.column, message('import.no-layer', { cellTypedText: layerCell.text }));

    const dayOf = ofReading('day', day);
    const timeOf = ofReading('time', (time) => {
      const minutes = time && timeIn(time.text);
      if (time && minutes === null)
        refuse(time.column, message('import.no-time', { cellTypedText: time.text }));
      return time && { column: time.column, minutes };
    });
    const tempIn = (found: ReturnType<typeof of>): number | null => {
      const tempC = temperature(row, found);
      if (tempC === undefined) isGood = false;
      return tempC ?? null;
    };
    const tempOf = ofReading('wood-temp', tempIn);
    const tempOn = new Map(tempsOfDays.map((column) => [onOf(column), tempIn(of('wood-temp', column))]));
    const depthOf = ofReading('depth', (found) => {
      const named = found && depthNamed(found.text);
      const mm = named === null ? (length(found, 1, 500)?.mm ?? null) : null;
      if (found && mm !== null && thicknessMm !== null && mm > thicknessMm)
        refuse(found.column, message('import.depth-impossible', { depthMm: mm }));
      return { named, mm };
    });
    const unitOf = ofReading('reading-unit', (found) => {
      const unit = found && readingUnitNamed(found.text);
      if (found && unit === null)
        refuse(found.column, message('import.no-reading-unit', { cellTypedText: found.text }));
      return unit;
    });
    const whyNot = textOf('excluded', MOST_REASON_LETTERS);
    const excluded = whyNot !== null && NOT_EXCLUDED.test(whyNot) ? null : whyNot;
    const days: RowOfBoard['days'] = [];
    for (const column of readingColumns) {
      const text = cell(column);
      if (isBlank(text)) continue;
      if (isWithoutNumber(text)) {
        withoutNumber.set(text, (withoutNumber.get(text) ?? 0) + 1);
        continue;
      }
      const isNone = whyTextIsNoReading(text, yard.today);
      if (isNone) {
        refuse(column, isNone);
        continue;
      }
      const choice = choices.columns[column]!;
      const read = readingsIn(text, unitOf(column) ?? choice.unit, decimalMark);
      if (read === null) {
        refuse(column, noReading(text));
        continue;
      }
      const rowDay = dayOf(column);
      const time = timeOf(column);
      const minutes = choice.on === null ? (time ? time.minutes : (rowDay?.minutes ?? null)) : null;
      const on = choice.on ?? rowDay?.day;
      if (on === undefined) {
        if (of('day', columnFor('day', column)) === null)
          refuse(column, message('import.reading-without-date'));
        continue;
      }
      if (on > yard.today) {
        refuse(column, message('import.date-impossible', { givenOn: on }));
        continue;
      }
      if (on === yard.today && (minutes ?? 0) > yard.minutesNow) {
        refuse(time?.column ?? columnFor('day', column), message('import.later-today'));
        continue;
      }
      const { named, mm: depthMm } = depthOf(column);
      for (const { raw, unit, isAbove, note } of read) {
        const why = whyNoReading(text, raw, unit);
        if (why) {
          refuse(column, why);
          continue;
        }
        const depth = choice.depth ?? named;
        const reading = {
          raw,
          unit,
          isAbove,
          depth,
          depthMm,
          tempC: tempOn.get(on) ?? tempOf(column),
          minutes,
          note,
          excluded,
        };
        days.push({ day: on, reading });
      }
    }
    const leftOn = known?.leftOn ?? null;
    const how = known?.isCut ? 'cut' : 'left';
    const late = leftOn === null ? undefined : days.find((each) => each.day > leftOn);
    if (late && leftOn !== null)
      refuse(null, message(`import.read-after-${how}`, { readOn: late.day, leftOn }));
    if (leftOn !== null && sawnOn !== null && sawnOn > leftOn)
      refuse(rows.columnOf('sawn-on'), message(`import.sawn-after-${how}`, { sawnOn, leftOn }));
    const sawn = sawnOn ?? known?.sawnOn ?? null;
    const early = sawn === null ? undefined : days.find((each) => each.day < sawn);
    if (early && sawn !== null)
      refuse(null, message('import.read-before-sawn', { readOn: early.day, sawnOn: sawn }));
    const log = textOf('log', 40);
    const stackName = textOf('stack', 80);
    const note = rows
      .columnsOf('note')
      .map(cell)
      .filter((text) => !isBlank(text))
      .join(' · ');
    if (note.length > MOST_NOTE_LETTERS)
      refuse(rows.columnOf('note'), message('import.too-long', { mostLetters: MOST_NOTE_LETTERS }));
    if (!isGood) return null;
    if (known?.otherId) otherIds.set(typedCode, { code, why: known.otherId });
    return {
      row,
      code,
      speciesId,
      thickness,
      widthMm,
      lengthMm,
      sawnOn,
      log,
      layer,
      stackName,
      placeName,
      note,
      days,
    };
  }

  function isPlaceKnown(text: string): boolean {
    return yard.places.has(nameKey(text)) || answerFor(choices.placesOfNames, text) !== undefined;
  }

  /** Undefined where it was refused. */
  function temperature(
    row: number,
    found: { column: number; choice: ColumnChoice; text: string } | null,
  ): number | null | undefined {
    if (!found) return null;
    const read = numberIn(found.text, choices.decimalMark);
    const unit = read?.unit === 'f' || read?.unit === 'c' ? read.unit : found.choice.unit;
    const tempC = read && celsiusFromTemperature(read.value, unit === 'f' ? 'imperial' : 'metric');
    if (tempC === null) {
      rows.refuse(row, found.column, message('import.no-temperature', { cellTypedText: found.text }));
      return undefined;
    }
    if (tempC < -40 || tempC > WARMEST_C) {
      rows.refuse(row, found.column, message('import.temperature-impossible', { woodTempC: tempC }));
      return undefined;
    }
    return tempC;
  }

  const { twice: alikeRows, areSpots } = rowsTwice(byCode, (row) =>
    choices.columns.map((_, column) => rows.text(row, column)),
  );
  if (!areSpots) {
    for (const { row, firstRow } of alikeRows)
      rows.refuse(row, null, message('import.row-twice', { line: firstRow + 1 }));
    const isTwice = new Set(alikeRows.map(({ row }) => row));
    for (const [code, group] of byCode)
      byCode.set(
        code,
        group.filter(({ row }) => !isTwice.has(row)),
      );
  }
  const alike = areSpots ? alikeRows.length : 0;
  const boards = oneOfEachBoard(byCode, rows, choices, yard);
  const firstRows = firstRowsRead(byCode, boards.boards, rows, yard);
  return { ...boards, otherIds, withoutNumber, alike, firstRows };
}

/** What a cell of readings has; null where it is no number. */
function readingsIn(
  text: string,
  unit: ColumnUnit | null,
  decimalMark: '.' | ',',
): Pick<TableReading, 'raw' | 'unit' | 'isAbove' | 'note'>[] | null {
  const found = numbersIn(text, decimalMark) ?? onlyFirst(numberIn(text, decimalMark));
  if (found === null || found.length === 0) return null;
  if (found.some(({ unit: own }) => own !== null && !isReadingUnit(own))) return null;
  return found.map(({ value, unit: own, isAbove, note }) => {
    const used = own ?? unit;
    if (isOhmUnit(used)) return { raw: ohmsIn(value, used), unit: 'ohm', isAbove, note };
    const scale = own === null && unit === 'share' ? 100 : 1;
    return { raw: Number((value * scale).toPrecision(12)), unit: 'pct', isAbove, note };
  });
}
const isReadingUnit = (unit: ColumnUnit): boolean => unit === 'pct' || isOhmUnit(unit);
/** The unit that a cell names; null for none. */
function readingUnitNamed(text: string): ColumnUnit | null {
  const unit = unitAt(text)?.unit;
  return unit !== undefined && isReadingUnit(unit) ? unit : null;
}
const onlyFirst = (number: NumberInCell | null): NumberInCell[] | null => number && [number];
