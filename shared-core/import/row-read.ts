import { type Message, message, thicknessOf } from '../words/message.ts';
import type { BoardToAdd, KnownYard, RowOfBoard, TableReading } from './boards-of-table.ts';
import type { Rows } from './rows.ts';
import { nameOfSpecies } from './species-named.ts';

/** So many rows show how a table is read. */
const MOST_SHOWN = 5;

/** The first rows that go in, each as it was read, so that a person sees what goes wrong before it is saved. */
export function firstRowsRead(
  byCode: ReadonlyMap<string, readonly RowOfBoard[]>,
  boards: readonly BoardToAdd[],
  rows: Rows,
  yard: KnownYard,
): Message[] {
  const refused = new Set(rows.refused().map(({ row }) => row));
  const toAdd = new Map(boards.map((board) => [board.code, board]));
  return [...byCode.values()]
    .flat()
    .filter(({ row }) => !refused.has(row))
    .sort((a, b) => a.row - b.row)
    .slice(0, MOST_SHOWN)
    .map((row) => rowRead(row, toAdd.get(row.code), yard));
}

function rowRead(row: RowOfBoard, board: BoardToAdd | undefined, yard: KnownYard): Message {
  const readOf = new Map<string, TableReading[]>();
  for (const { day, reading } of row.days) readOf.set(day, [...(readOf.get(day) ?? []), reading]);
  const told = [
    board ? boardRead(board, yard) : message('import.row-known'),
    ...(board?.log ? [message('import.row-log', { logName: board.log })] : []),
    ...(board?.sawnOn ? [message('import.row-sawn', { sawnOn: board.sawnOn })] : []),
    ...[...readOf].map(([readOn, readings]) =>
      message('import.row-readings', { readings: readings.map(readingRead), readOn }),
    ),
  ];
  return message('import.row-read', { line: row.row + 1, boardCode: row.code, rowSentences: told });
}

function boardRead(board: BoardToAdd, yard: KnownYard): Message {
  const { speciesId, stackName, widthMm, lengthMm: boardLengthMm } = board;
  const speciesName = nameOfSpecies(speciesId, yard.species);
  const facts = { speciesName, stackName, boardThickness: thicknessOf(board) };
  if (widthMm !== null && boardLengthMm !== null)
    return message('import.row-board.sizes', { ...facts, widthMm, boardLengthMm });
  if (widthMm !== null) return message('import.row-board.width', { ...facts, widthMm });
  if (boardLengthMm !== null) return message('import.row-board.length', { ...facts, boardLengthMm });
  return message('import.row-board', facts);
}

function readingRead({ raw, unit, isAbove, depth, tempC: woodTempC }: TableReading): Message {
  const number =
    unit === 'pct' ? message('act.value.pct', { rawPct: raw }) : message('act.value.ohm', { rawOhm: raw });
  const shown = isAbove ? message('import.row-reading.above', { reading: number }) : number;
  const reading = depth === null ? shown : message(`import.row-reading.${depth}`, { reading: shown });
  return woodTempC === null ? reading : message('import.row-reading.temp', { reading, woodTempC });
}
