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
import { boardCodeSchema, MOST_NOTE_LETTERS, type NewBoard } from '../contract/yard.ts';
import type { Depth } from '../probing/readings/reading.ts';
import { celsiusFromTemperature } from '../units/temperature.ts';
import { ohmsIn } from '../units/typed-ohms.ts';
import type { Species } from '../wood/species/species.ts';
import { type Message, message, thicknessOf } from '../words/message.ts';
import { codeOf } from './board-id.ts';
import {
  type DayInCell,
  dayIn,
  isBlank,
  isWithoutNumber,
  lengthIn,
  type NumberInCell,
  numberIn,
  numbersIn,
  timeIn,
  unitAt,
} from './cells.ts';
import { ofEachReading } from './guess-columns.ts';
import { depthNamed } from './headers.ts';
import type { Rows } from './rows.ts';
import { speciesNamed } from './species-named.ts';
import { isTotal } from './totals.ts';
import { whyNoReading, whyTextIsNoReading } from './usable-reading.ts';

/** One reading of a table. */
export interface TableReading {
  raw: number;
  unit: 'pct' | 'ohm';
  /** What it tells; null where that is not known. */
  depth: Depth | null;
  /** How deep the pins were, mm; null where that is not known. */
  depthMm: number | null;
  /** The wood's temperature, °C; null where that is not known. */
  tempC: number | null;
  /** Since midnight; null where no time is given. */
  minutes: number | null;
  /** What else stood in its cell. */
  note: string;
  /** Why it is excluded, as the table says; null where it is not. */
  excluded: string | null;
}

/** A board's readings of one local day. */
export interface BoardDay {
  code: string;
  /** The board's row, where the yard has it. */
  boardId: number | null;
  day: string;
  /** Of the first reading, since midnight; null where no time is given. */
  minutes: number | null;
  readings: TableReading[];
}

/** A board that the yard does not know. */
export interface BoardToAdd
  extends Pick<
    NewBoard,
    | 'code'
    | 'speciesId'
    | 'thicknessMm'
    | 'thicknessQuarters'
    | 'widthMm'
    | 'lengthMm'
    | 'sawnOn'
    | 'log'
    | 'layer'
    | 'note'
  > {
  stackName: string;
  /** As the table names it; null where it names none. */
  placeName: string | null;
  /** The first day that the table has a reading of; null without any. */
  firstReadOn: string | null;
}

/** A board of the yard, as far as a table is compared with it. */
export interface KnownBoard
  extends Pick<NewBoard, 'speciesId' | 'thicknessMm' | 'thicknessQuarters' | 'sawnOn'> {
  id: number;
  /** Another than that of the table where the board of that ID was merged. */
  code: string;
  /** The local day on which it was sold, used or scrapped; null while it is in the yard. */
  leftOn: string | null;
}

/** What of the yard a table is compared with. */
export interface KnownYard {
  today: string;
  /** Since midnight, now. */
  minutesNow: number;
  /** A time by a clock so many minutes ahead of UTC, by the clock of the yard. */
  localOf(time: { day: string; minutes: number; aheadMinutes: number }): { day: string; minutes: number };
  species: readonly Species[];
  /** That with this ID, or else the one that it was merged into, which has another. */
  board(code: string): KnownBoard | undefined;
  /** By `nameKey`, the stacks' names. */
  stacks: ReadonlyMap<string, string>;
  /** By `nameKey`. */
  places: ReadonlyMap<string, number>;
  /** Those of these stacks, by `nameKey`, and places that are closed: what comes to them opens them again. */
  closedStacks: ReadonlySet<string>;
  closedPlaces: ReadonlySet<number>;
}

/** What boards and readings a table brings. */
export interface BoardsOfTable {
  boards: BoardToAdd[];
  days: BoardDay[];
  /** Boards of the table that the yard has. */
  known: number;
  /** Those of them that left the yard, by their IDs. */
  left: string[];
  /** Those of them that the table gives another species or thickness. */
  otherInYard: number;
  /** Boards that come into one stack, of several that the table has for them. */
  inTwoStacks: number;
  /** IDs of the table whose boards were merged into others, with the IDs of these. */
  merged: ReadonlyMap<string, string>;
  /** Cells of readings in which the meter showed no number, as "OL", with how many have each. */
  withoutNumber: ReadonlyMap<string, number>;
}

interface RowFacts {
  row: number;
  code: string;
  speciesId: string | null;
  thickness: { mm: number; quarters: number | null } | null;
  widthMm: number | null;
  lengthMm: number | null;
  sawnOn: string | null;
  log: string | null;
  layer: number | null;
  stackName: string | null;
  placeName: string | null;
  note: string;
  days: { day: string; reading: TableReading }[];
}

/** Wood that is probed is no warmer, °C; in Fahrenheit such a number is usual. Common practice, no source. */
const WARMEST_C = 50;
/** In a column that says which readings are excluded, these say that one is not. Common practice, no source. */
const NOT_EXCLUDED = /^(no|false|0|nein)$/i;
/** As long as a reason is that a person gives. */
const MOST_REASON_LETTERS = 200;
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
  const species = speciesReader(rows, choices, yard);
  const writtenAs = new Map<string, string>();
  /** Cells in which the meter showed no number, by what is written there. */
  const withoutNumber = new Map<string, number>();
  const merged = new Map<string, string>();
  const readingColumns = rows.columnsOf('reading');
  const columnsFor = new Map(
    rolesOfReadings.map((role) => [role, ofEachReading(rows.columnsOf(role), readingColumns)]),
  );
  const columnFor = (role: ColumnRole, reading: number): number =>
    columnsFor.get(role)?.(reading) ?? rows.columnOf(role);
  const byCode = new Map<string, RowFacts[]>();
  for (const row of rows.used) {
    const facts = readRow(row);
    if (facts === null) continue;
    const group = byCode.get(facts.code);
    if (group) group.push(facts);
    else byCode.set(facts.code, [facts]);
  }

  function readRow(row: number): RowFacts | null {
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
      const said = new Map(rows.columnsOf(role).map((column) => [column, read(of(role, column))]));
      const none = said.size === 0 ? read(null) : undefined;
      return (reading) => said.get(columnFor(role, reading)) ?? (none as T);
    }

    const codeColumn = rows.columnOf('code');
    const parts = rows.columnsOf('code').map(cell);
    const typed = parts.filter((part) => !isBlank(part)).join(' ');
    if (typed === '') return refuse(codeColumn, message('import.no-code'));
    if (parts.some(isTotal)) return refuse(codeColumn, message('import.totals', { cellTypedText: typed }));
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
    if (isTurned && writtenAs.has(typedCode))
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
      if (written === null) return refuse(column, message('import.no-date', { cellTypedText: text }));
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
    const speciesId = speciesText && species(row, speciesText.column, speciesText.text);
    if (speciesText && speciesId === null) isGood = false;
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
    const tempOf = ofReading('wood-temp', (found) => {
      const tempC = temperature(row, found);
      if (tempC === undefined) isGood = false;
      return tempC ?? null;
    });
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
    const days: RowFacts['days'] = [];
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
      for (const { raw, unit, note } of read) {
        const why = whyNoReading(text, raw, unit);
        if (why) {
          refuse(column, why);
          continue;
        }
        const depth = choice.depth ?? named;
        const reading = { raw, unit, depth, depthMm, tempC: tempOf(column), minutes, note, excluded };
        days.push({ day: on, reading });
      }
    }
    const leftOn = known?.leftOn ?? null;
    const late = leftOn === null ? undefined : days.find((each) => each.day > leftOn);
    if (late && leftOn !== null)
      refuse(null, message('import.read-after-left', { readOn: late.day, leftOn }));
    if (leftOn !== null && sawnOn !== null && sawnOn > leftOn)
      refuse(rows.columnOf('sawn-on'), message('import.sawn-after-left', { sawnOn, leftOn }));
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
    if (code !== typedCode) merged.set(typedCode, code);
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

  return { ...gather(byCode, rows, choices, yard), merged, withoutNumber };
}

/** What a cell of readings has; null where it is no number. */
function readingsIn(
  text: string,
  unit: ColumnUnit | null,
  decimalMark: '.' | ',',
): Pick<TableReading, 'raw' | 'unit' | 'note'>[] | null {
  const found = numbersIn(text, decimalMark) ?? onlyFirst(numberIn(text, decimalMark));
  if (found === null || found.length === 0) return null;
  if (found.some(({ unit: own }) => own !== null && !isReadingUnit(own))) return null;
  return found.map(({ value, unit: own, note }) => {
    const used = own ?? unit;
    if (isOhmUnit(used)) return { raw: ohmsIn(value, used), unit: 'ohm', note };
    const scale = own === null && unit === 'share' ? 100 : 1;
    return { raw: Number((value * scale).toPrecision(12)), unit: 'pct', note };
  });
}
const isReadingUnit = (unit: ColumnUnit): boolean => unit === 'pct' || isOhmUnit(unit);
/** The unit that a cell names; null for none. */
function readingUnitNamed(text: string): ColumnUnit | null {
  const unit = unitAt(text)?.unit;
  return unit !== undefined && isReadingUnit(unit) ? unit : null;
}
const onlyFirst = (number: NumberInCell | null): NumberInCell[] | null => number && [number];

/** Finds the species that a text means, each text once. */
function speciesReader(rows: Rows, { speciesOfNames }: ImportChoices, { species }: KnownYard) {
  const found = new Map<string, string | null>();
  return (row: number, column: number, text: string): string | null => {
    const key = nameKey(text);
    let id = found.get(key);
    if (id === undefined) {
      id = answerFor(speciesOfNames, text) ?? speciesNamed(text, species);
      found.set(key, id);
    }
    if (id === null) {
      rows.missSpecies(text);
      rows.refuse(row, column, message('import.species-unknown', { speciesName: text }));
    }
    return id;
  };
}

/** The rows of each board as one: what is given once holds for all of them. */
function gather(
  byCode: ReadonlyMap<string, readonly RowFacts[]>,
  rows: Rows,
  choices: ImportChoices,
  yard: KnownYard,
): Omit<BoardsOfTable, 'merged' | 'withoutNumber'> {
  const boards: BoardToAdd[] = [];
  const days: BoardDay[] = [];
  let known = 0;
  const left: string[] = [];
  let otherInYard = 0;
  let inTwoStacks = 0;
  for (const [code, all] of byCode) {
    const inYard = yard.board(code);
    const boardId = inYard?.id ?? null;
    const isKnown = inYard !== undefined;
    const stackNames = new Set(
      all.flatMap(({ stackName }) => (stackName === null ? [] : nameKey(stackName))),
    );
    const others = inYard ? all.filter((facts) => isOther(facts, inYard)) : [];
    if (others.length > 0) otherInYard++;
    if (inYard && !choices.areInYard) for (const facts of others) refuseOther(facts, inYard, rows, yard);
    const ofKnown = choices.areInYard ? all : all.filter((facts) => !others.includes(facts));
    const alike = isKnown ? ofKnown : all.filter((facts) => !conflicts(facts, all, rows));
    const group = stackNames.size > 1 ? inOneStackADay(alike, rows) : alike;
    const first = <T>(pick: (facts: RowFacts) => T | null): T | null =>
      group.map(pick).find((value) => value !== null) ?? null;
    if (group.length === 0) continue;
    const ofBoard = daysOf(code, boardId, group);
    if (isKnown) {
      known++;
      if (yard.board(code)?.leftOn != null) left.push(code);
      days.push(...ofBoard);
      continue;
    }
    const speciesId = first(({ speciesId }) => speciesId) ?? choices.speciesId;
    const thickness =
      first(({ thickness }) => thickness) ??
      (choices.thicknessMm === null
        ? null
        : { mm: choices.thicknessMm, quarters: choices.thicknessQuarters });
    const stackName = first(({ stackName }) => stackName) ?? choices.stackName;
    const missing =
      (speciesId === null && message('import.no-species')) ||
      (thickness === null && message('import.no-thickness')) ||
      (stackName === null && message('import.no-stack'));
    if (missing || speciesId === null || thickness === null || stackName === null) {
      for (const { row } of group) rows.refuse(row, null, missing || message('import.no-species'));
      continue;
    }
    if (stackNames.size > 1) inTwoStacks++;
    const notes = [...new Set(group.map(({ note }) => note).filter((note) => note !== ''))].join('\n');
    if (notes.length > MOST_NOTE_LETTERS) {
      const tooLong = message('import.too-long', { mostLetters: MOST_NOTE_LETTERS });
      for (const { row } of group) rows.refuse(row, rows.columnOf('note'), tooLong);
      continue;
    }
    boards.push({
      code,
      speciesId,
      thicknessMm: thickness.mm,
      thicknessQuarters: thickness.quarters,
      widthMm: first(({ widthMm }) => widthMm),
      lengthMm: first(({ lengthMm }) => lengthMm),
      sawnOn: first(({ sawnOn }) => sawnOn),
      log: first(({ log }) => log) ?? '',
      layer: first(({ layer }) => layer),
      note: notes,
      stackName: yard.stacks.get(nameKey(stackName)) ?? stackName,
      placeName: first(({ placeName }) => placeName),
      firstReadOn: ofBoard.map(({ day }) => day).sort()[0] ?? null,
    });
    days.push(...ofBoard);
  }
  return { boards, days, known, left, otherInYard, inTwoStacks };
}

const isOtherThickness = (one: number, other: number): boolean => Math.abs(one - other) > 0.5;

/** Whether a row gives a board another species or thickness than the board of the yard with its ID. */
const isOther = ({ speciesId, thickness }: RowFacts, inYard: KnownBoard): boolean =>
  (speciesId !== null && speciesId !== inYard.speciesId) ||
  (thickness !== null && isOtherThickness(thickness.mm, inYard.thicknessMm));

function refuseOther(
  { row, code, speciesId }: RowFacts,
  inYard: KnownBoard,
  rows: Rows,
  yard: KnownYard,
): void {
  if (speciesId !== null && speciesId !== inYard.speciesId) {
    const speciesName = yard.species.find(({ id }) => id === inYard.speciesId)?.name ?? inYard.speciesId;
    const facts = { boardCode: code, speciesName };
    rows.refuse(row, rows.columnOf('code'), message('import.yard-other-species', facts));
  } else {
    const yardThickness = thicknessOf(inYard);
    const facts = { boardCode: code, yardThickness };
    rows.refuse(row, rows.columnOf('code'), message('import.yard-other-thickness', facts));
  }
}

/** Whether a row gives its board another species or thickness than the first row that gives one; it is then refused. */
function conflicts(facts: RowFacts, all: readonly RowFacts[], rows: Rows): boolean {
  const given = all.find(({ speciesId }) => speciesId !== null);
  if (facts.speciesId !== null && given && given.speciesId !== facts.speciesId) {
    rows.refuse(
      facts.row,
      rows.columnOf('species'),
      message('import.other-species', { line: given.row + 1 }),
    );
    return true;
  }
  const logged = all.find(({ log }) => log !== null);
  if (facts.log !== null && logged && nameKey(logged.log ?? '') !== nameKey(facts.log)) {
    rows.refuse(facts.row, rows.columnOf('log'), message('import.other-log', { line: logged.row + 1 }));
    return true;
  }
  const thick = all.find(({ thickness }) => thickness !== null);
  if (facts.thickness && thick?.thickness && isOtherThickness(thick.thickness.mm, facts.thickness.mm)) {
    const { mm, quarters } = thick.thickness;
    const rowThickness = thicknessOf({ thicknessMm: mm, thicknessQuarters: quarters });
    rows.refuse(
      facts.row,
      rows.columnOf('thickness'),
      message('import.other-thickness', { line: thick.row + 1, rowThickness }),
    );
    return true;
  }
  return false;
}

/** Rows of a board, without those with readings of a day on which it was read in another stack; they are refused. */
function inOneStackADay(group: readonly RowFacts[], rows: Rows): RowFacts[] {
  const stackOfDay = new Map<string, { name: string; row: number }>();
  return group.filter(({ row, stackName, days }) => {
    if (stackName === null) return true;
    const name = nameKey(stackName);
    for (const { day } of days) {
      const first = stackOfDay.get(day) ?? { name, row };
      stackOfDay.set(day, first);
      if (first.name === name) continue;
      rows.refuse(row, rows.columnOf('stack'), message('import.other-stack', { line: first.row + 1 }));
      return false;
    }
    return true;
  });
}

const earlier = (one: number | null, other: number | null): number | null =>
  one === null || other === null ? (one ?? other) : Math.min(one, other);

function daysOf(code: string, boardId: number | null, group: readonly RowFacts[]): BoardDay[] {
  const byDay = new Map<string, BoardDay>();
  for (const { days } of group) {
    for (const { day, reading } of days) {
      const { minutes } = reading;
      const same = byDay.get(day);
      if (same) {
        same.readings.push(reading);
        same.minutes = earlier(same.minutes, minutes);
      } else byDay.set(day, { code, boardId, day, minutes, readings: [reading] });
    }
  }
  return [...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
}
