import { type ColumnUnit, type ImportChoices, isOhmUnit } from '../contract/import.ts';
import { MOST_PIECE_LETTERS } from '../contract/oven-checks.ts';
import { MOST_NOTE_LETTERS } from '../contract/yard.ts';
import { KG_PER_POUND } from '../measures.ts';
import { celsiusFromTemperature } from '../units/temperature.ts';
import { ohmsIn } from '../units/typed-ohms.ts';
import { message } from '../words/message.ts';
import type { KnownYard } from './boards-of-table.ts';
import { dayIn, isBlank, numberIn, numbersIn } from './cells.ts';
import type { Rows } from './rows.ts';
import { speciesReader } from './species-named.ts';
import { whyNoReading, whyTextIsNoReading } from './usable-reading.ts';

/** An oven-dry check of a table: what the meter showed of a piece, and what it weighed before and after. */
export interface OvenCheckOfTable {
  piece: string;
  speciesId: string;
  day: string;
  readings: number[];
  unit: 'pct' | 'ohm';
  woodTempC: number | null;
  wetGrams: number;
  /** Out of the oven, in the order of the columns; the day is null where the table has none. */
  dry: { grams: number; day: string | null }[];
  /** The smallest step of the balance, as its weights are written. */
  balanceGrams: number;
  note: string;
}

const GRAMS: Partial<Record<ColumnUnit, number>> = {
  g: 1,
  kg: 1000,
  oz: (KG_PER_POUND * 1000) / 16,
  lb: KG_PER_POUND * 1000,
};

/** The wettest green sapwood holds 2.5 times its dry weight of water (Wood Handbook, Table 4-1: 249%). */
const WETTEST = 3;

/** A table of oven-dry checks, a row a piece: what goes in, and of each row that does not, why. */
export function checkOven(rows: Rows, choices: ImportChoices, yard: KnownYard): OvenCheckOfTable[] {
  const { decimalMark, columns } = choices;
  const balanceGrams = balanceOf(rows, choices);
  const speciesIn = speciesReader(rows, choices, yard.species);
  return rows.used.flatMap((row) => {
    let isGood = true;
    const refuse = (column: number, problem: Parameters<Rows['refuse']>[2]): null => {
      rows.refuse(row, column < 0 ? null : column, problem);
      isGood = false;
      return null;
    };
    const textAt = (column: number): string => (column < 0 ? '' : rows.text(row, column));
    function grams(column: number): number | null {
      const text = textAt(column);
      const read = numberIn(text, decimalMark);
      const perUnit = GRAMS[read?.unit ?? 'mm'] ?? GRAMS[columns[column]?.unit ?? 'g'] ?? 1;
      const value = read && read.value * perUnit;
      if (value === null || value < 0.01 || value > 100_000)
        return refuse(column, message('import.no-weight', { cellTypedText: text }));
      return value;
    }
    const piece = textAt(rows.columnOf('piece'));
    if (isBlank(piece)) refuse(rows.columnOf('piece'), message('import.no-piece'));
    const name = textAt(rows.columnOf('species'));
    const speciesId = isBlank(name) ? choices.speciesId : speciesIn(name);
    if (speciesId === null) {
      if (isBlank(name)) refuse(rows.columnOf('species'), message('import.no-species'));
      else {
        refuse(rows.columnOf('species'), message('import.species-unknown', { speciesName: name }));
      }
    }
    const dayColumn = rows.columnOf('day');
    const date = dayIn(textAt(dayColumn), columns[dayColumn]?.order ?? 'ymd', yard.today);
    if (date === null) refuse(dayColumn, message('import.no-date', { cellTypedText: textAt(dayColumn) }));
    else if (date.day > yard.today)
      refuse(dayColumn, message('import.date-impossible', { givenOn: date.day }));
    /** Of a second date on, each is of the weights to its right. */
    function dayOfDry(column: number): string | null {
      const own = rows
        .columnsOf('day')
        .slice(1)
        .findLast((each) => each < column);
      const text = own === undefined ? '' : textAt(own);
      if (own === undefined || isBlank(text)) return null;
      const read = dayIn(text, columns[own]?.order ?? 'ymd', yard.today);
      if (read === null) return refuse(own, message('import.no-date', { cellTypedText: text }));
      if (read.day > yard.today) return refuse(own, message('import.date-impossible', { givenOn: read.day }));
      if (date !== null && read.day < date.day) return refuse(own, message('import.dry-before'));
      return read.day;
    }
    const readingColumns = rows.columnsOf('reading').filter((column) => !isBlank(textAt(column)));
    const isOhms = readingColumns.some((column) => isOhmUnit(columns[column]?.unit ?? null));
    const readings = readingColumns.flatMap((column) => {
      const text = textAt(column);
      const values = (numbersIn(text, decimalMark) ?? []).map(({ value, unit: own, isAbove }) => {
        // What a curve is fitted to is known.
        if (isAbove) return 0;
        const unit = own ?? columns[column]?.unit ?? 'pct';
        if (isOhmUnit(unit)) return isOhms ? ohmsIn(value, unit) : 0;
        return isOhms || (unit !== 'pct' && unit !== 'share') ? 0 : value * (unit === 'share' ? 100 : 1);
      });
      const why =
        whyTextIsNoReading(text, yard.today) ??
        (values.length === 0 ? message('import.no-reading', { cellTypedText: text }) : null) ??
        values.map((raw) => whyNoReading(text, raw, isOhms ? 'ohm' : 'pct')).find((each) => each !== null);
      if (why) refuse(column, why);
      return why ? [] : values;
    });
    if (readingColumns.length === 0) refuse(-1, message('import.no-meter-value'));
    const tempColumn = rows.columnOf('wood-temp');
    const temp = isBlank(textAt(tempColumn)) ? null : numberIn(textAt(tempColumn), decimalMark);
    const tempUnit = temp?.unit === 'c' || temp?.unit === 'f' ? temp.unit : columns[tempColumn]?.unit;
    const woodTempC = temp && celsiusFromTemperature(temp.value, tempUnit === 'f' ? 'imperial' : 'metric');
    if (!isBlank(textAt(tempColumn)) && temp === null)
      refuse(tempColumn, message('import.no-temperature', { cellTypedText: textAt(tempColumn) }));
    if (woodTempC !== null && (woodTempC < -40 || woodTempC > 80))
      refuse(tempColumn, message('import.temperature-impossible', { woodTempC }));
    const wetGrams = grams(rows.columnOf('wet-weight'));
    const dry = rows
      .columnsOf('dry-weight')
      .filter((column) => !isBlank(textAt(column)))
      .map((column) => ({ grams: grams(column), day: dayOfDry(column) }));
    const dryGrams = dry.flatMap(({ grams: weight }) => weight ?? []);
    if (wetGrams !== null && dryGrams.some((weight) => weight > wetGrams))
      refuse(rows.columnOf('dry-weight'), message('import.dry-heavier'));
    const note = rows
      .columnsOf('note')
      .map(textAt)
      .filter((text) => !isBlank(text))
      .join(' · ');
    const letters = [
      [rows.columnOf('piece'), piece, MOST_PIECE_LETTERS],
      [rows.columnOf('note'), note, MOST_NOTE_LETTERS],
    ] as const;
    for (const [column, text, mostLetters] of letters) {
      if (text.length > mostLetters) refuse(column, message('import.too-long', { mostLetters }));
    }
    if (wetGrams !== null && dryGrams.some((weight) => wetGrams / weight - 1 > WETTEST))
      refuse(rows.columnOf('wet-weight'), message('import.weights-impossible'));
    if (!isGood || speciesId === null || date === null || wetGrams === null) return [];
    return [
      {
        piece,
        speciesId,
        day: date.day,
        readings: readings.slice(0, 40),
        unit: isOhms ? 'ohm' : 'pct',
        woodTempC,
        wetGrams,
        dry: dry.flatMap(({ grams: weight, day }) => (weight === null ? [] : { grams: weight, day })),
        balanceGrams,
        note,
      },
    ];
  });
}

/** The bounds of a balance's step, g, as for a check that is typed. */
const FINEST_GRAMS = 0.0001;
const COARSEST_GRAMS = 100;

/** A balance shows the last digit that any of its weights has: spreadsheets leave out zeros at the end. */
function balanceOf(rows: Rows, { columns, decimalMark }: ImportChoices): number {
  const weights = [...rows.columnsOf('wet-weight'), ...rows.columnsOf('dry-weight')];
  const steps = rows.used.flatMap((row) =>
    weights.flatMap((column) => {
      const text = rows.text(row, column);
      const read = numberIn(text, decimalMark);
      if (read === null) return [];
      const [, decimals = ''] = text.split(decimalMark);
      const digits = /^\d*/.exec(decimals)![0].length;
      return 10 ** -digits * (GRAMS[read.unit ?? columns[column]?.unit ?? 'g'] ?? 1);
    }),
  );
  return Math.min(
    COARSEST_GRAMS,
    Math.max(
      FINEST_GRAMS,
      steps.reduce((a, b) => Math.min(a, b), Infinity),
    ),
  );
}
