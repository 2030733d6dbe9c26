import { readFileSync, statSync } from 'node:fs';
import Papa from 'papaparse';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { MOST_CELL_LETTERS } from '../../../shared-core/contract/import.ts';
import { cellText } from '../../../shared-core/import/cells.ts';
import type { Table } from '../../../shared-core/import/table.ts';
import { message } from '../../../shared-core/words/message.ts';

/** 100,000 rows of 20 columns are some 15 MB. */
const MOST_BYTES = 64 * 1024 * 1024;
const MOST_ROWS = 250_000;
const MOST_COLUMNS = 500;
/** Every row is as wide as the widest, in memory: one long line in a small file must not fill it. */
const MOST_CELLS = 10_000_000;
/** No table of lumber has a longer line; a file of another kind may be one. */
const MOST_LINE_BYTES = 256 * 1024;

/** What other kinds of files begin with, in Latin-1. */
const KINDS: readonly [string, 'import.refused-spreadsheet' | 'import.refused-kind'][] = [
  ['PK\x03\x04', 'import.refused-spreadsheet'],
  ['PK\x05\x06', 'import.refused-spreadsheet'],
  ['\xd0\xcf\x11\xe0', 'import.refused-spreadsheet'],
  ['%PDF', 'import.refused-kind'],
  ['SQLite', 'import.refused-kind'],
  ['\x1f\x8b', 'import.refused-kind'],
  ['\x89PNG', 'import.refused-kind'],
  ['\xff\xd8\xff', 'import.refused-kind'],
  ['{\\rtf', 'import.refused-kind'],
];

/** @throws Refusal for a file that cannot be read, for what is no text, or none that fits in memory */
export function tableInFile(file: string): Table {
  return tableIn(textIn(bytesOf(file)));
}

function bytesOf(file: string): Buffer {
  try {
    const found = statSync(file);
    // Whoever opens a pipe waits for as long as nobody writes to it.
    if (!found.isFile()) throw new Refusal(message('import.refused-no-file'));
    if (found.size > MOST_BYTES) throw new Refusal(message('import.refused-large'));
    return readFileSync(file);
  } catch (error) {
    const { code } = error as { code?: unknown };
    throw typeof code === 'string' && /^E[A-Z]+$/.test(code)
      ? new Refusal(message('import.refused-no-file'))
      : error;
  }
}

/**
 * The text of a file in UTF-8, in UTF-16 with its mark or without, or in Windows-1252, which every file fits.
 * @throws Refusal for a file of another kind
 */
export function textIn(bytes: Buffer): string {
  const start = bytes.subarray(0, 16).toString('latin1');
  const kind = KINDS.find(([begins]) => start.startsWith(begins));
  if (kind) throw new Refusal(message(kind[1]));
  const text = new TextDecoder(encodingOf(bytes)).decode(bytes);
  // No text has these. The first part is enough: a file of another kind has them soon.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
  if (/[\x00-\x08\x0e-\x1a\x1c-\x1f]/.test(text.slice(0, 100_000)))
    throw new Refusal(message('import.refused-kind'));
  return text;
}

function encodingOf(bytes: Buffer): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const head = bytes.subarray(0, 2000);
  const zeros = [0, 1].map((odd) => head.filter((byte, at) => byte === 0 && at % 2 === odd).length);
  // Every other byte of Latin letters in UTF-16 is 0.
  if (zeros[1]! > head.length / 4 && zeros[0] === 0) return 'utf-16le';
  if (zeros[0]! > head.length / 4 && zeros[1] === 0) return 'utf-16be';
  try {
    // As a part of a stream: a copy that was cut short may end within a letter.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

const SEPARATORS = ['\t', ';', ',', '|'] as const;

/**
 * The cells of a text, separated by whatever separates most of its first lines alike.
 * @throws Refusal for a text that is no table
 */
export function tableIn(text: string): Table {
  refuseEndlessLine(text);
  if (text.trim() === '') throw new Refusal(message('import.refused-empty'));
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: separatorOf(text) });
  const open = errors.find(({ code }) => code === 'MissingQuotes');
  if (open && data.length <= (open.row ?? 0) + 1) {
    throw new Refusal(message('import.refused-quotes', { line: (open.row ?? 0) + 1 }));
  }
  if (data.length > MOST_ROWS) throw new Refusal(message('import.refused-rows', { most: MOST_ROWS }));
  const width = data.reduce((most, row) => Math.max(most, row.length), 0);
  if (width > MOST_COLUMNS) throw new Refusal(message('import.refused-columns', { most: MOST_COLUMNS }));
  const mostRows = Math.floor(MOST_CELLS / Math.max(width, 1));
  if (data.length > mostRows) throw new Refusal(message('import.refused-rows', { most: mostRows }));
  const rows = data.map((row) => row.map((cell) => cellText(cell.slice(0, MOST_CELL_LETTERS))));
  const isBlank = (row: readonly string[]) => row.every((cell) => cell === '');
  while (rows.length > 0 && isBlank(rows.at(-1)!)) rows.pop();
  if (rows.length === 0) throw new Refusal(message('import.refused-empty'));
  return rows.map((row) => [...row, ...Array<string>(width - row.length).fill('')]);
}

function refuseEndlessLine(text: string): void {
  for (let from = 0; from < text.length; ) {
    const end = text.slice(from, from + MOST_LINE_BYTES).search(/[\r\n]/);
    if (end < 0 && text.length - from > MOST_LINE_BYTES) throw new Refusal(message('import.refused-line'));
    if (end < 0) return;
    const next = text.indexOf('\n', from + Math.max(end, 1));
    from = next < 0 ? from + end + 1 : next + 1;
  }
}

/** The separator that gives most of the first lines the same number of cells, and more than one. */
function separatorOf(text: string): string {
  const start = text.slice(0, 50_000);
  const scores = SEPARATORS.map((delimiter) => {
    const widths = Papa.parse<string[]>(start, { delimiter, preview: 60, skipEmptyLines: true })
      .data.slice(0, 50)
      .map((row) => row.length);
    const counts = new Map<number, number>();
    for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
    const [width = 1, lines = 0] = [...counts].sort(([a, n], [b, m]) => m - n || b - a)[0] ?? [];
    return { delimiter, score: width < 2 ? 0 : (lines / widths.length) * Math.min(width, 4) };
  });
  return scores.toSorted((a, b) => b.score - a.score)[0]!.delimiter;
}
