import { closeSync, openSync, writeSync } from 'node:fs';
import Database from 'better-sqlite3';
import type { LeftList } from '../../shared-core/contract/archive.ts';
import type { CsvKind, ExportKind } from '../../shared-core/contract/exchange.ts';
import { BYTE_ORDER_MARK, csvRow } from '../../shared-core/exchange/csv.ts';
import { csvTable } from '../../shared-core/exchange/csv-tables.ts';
import { tallyCsv } from '../../shared-core/exchange/tally-csv.ts';
import { tallyBySchema } from '../../shared-core/tally/tally.ts';
import type { Catalog } from '../../shared-core/words/en/index.ts';
import type { Display } from '../../shared-core/words/formats.ts';
import { createWords, type Say } from '../../shared-core/words/words.ts';
import { tallySlices } from '../app/stock/stack-volume.ts';
import { asBackupProblem } from '../store/backup.ts';
import { createBadCaches } from '../store/bad-caches.ts';
import { readsOf } from '../store/yard.ts';
import { csvRows } from './csv-rows.ts';
import { writeJson } from './json-export.ts';

/** What a file is made of. */
export interface Export {
  /** The yard file. */
  from: string;
  /** The folder of its pictures. */
  pictures: string;
  /** A file that is not there yet. */
  target: string;
  kind: ExportKind;
  /** Of the boards, those of this list; null: every board. */
  left?: LeftList | null;
  display: Display;
  /** UTC instant. */
  nowAt: string;
}

/** So much is handed to the disk at a time. */
const PART_LENGTH = 256 * 1024;
const TELL_EVERY_ROWS = 500;

/**
 * Writes a file of what a yard holds at this moment, whatever is saved meanwhile. Nothing is written to the yard.
 * @param catalog  the language of a table's column names and texts
 * @returns how many pictures are not in it because their files are missing or damaged
 * @throws Refusal that says what was wrong with the disk or the folder
 */
export function writeExport(
  { from, pictures, target, kind, left = null, display, nowAt }: Export,
  catalog: Catalog,
  tell: (done: number, total: number) => void,
): { missingPictures: number } {
  const { say } = createWords({ catalog, ...display });
  const db = new Database(from, { readonly: true, timeout: 2000 });
  try {
    db.exec('BEGIN');
    const to = openSync(target, 'wx', 0o600);
    try {
      let part = '';
      const put = (text: string): void => {
        part += text;
        if (part.length >= PART_LENGTH) flush();
      };
      const flush = (): void => {
        writeSync(to, part);
        part = '';
      };
      let missingPictures = 0;
      if (kind === 'everything') missingPictures = writeJson(db, { pictures, nowAt }, put, tell);
      else if (kind === 'tally') put(tallyText(db, display, say));
      else writeCsv(db, { kind, left, display, nowAt }, say, put, tell);
      flush();
      return { missingPictures };
    } finally {
      closeSync(to);
    }
  } catch (error) {
    throw asBackupProblem(error, target);
  } finally {
    db.close();
  }
}

/** What the boards amount to, split by all that a tally can be split by: a spreadsheet adds up what is to be together. */
function tallyText(db: Database.Database, display: Display, say: Say): string {
  const yard = readsOf(db, createBadCaches());
  const slices = tallySlices(() => yard, null, tallyBySchema.options);
  for (;;) {
    const { done, value } = slices.next();
    if (done) return tallyCsv(value, tallyBySchema.options, display.units, say);
  }
}

function writeCsv(
  db: Database.Database,
  {
    kind,
    left,
    display,
    nowAt,
  }: Pick<Export, 'display' | 'nowAt'> & { kind: CsvKind; left: LeftList | null },
  say: Say,
  put: (text: string) => void,
  tell: (done: number, total: number) => void,
): void {
  const { head, row } = csvTable(kind, display.units, say);
  put(BYTE_ORDER_MARK + csvRow(head));
  let rows = 0;
  for (const made of csvRows(db, kind, left, nowAt)) {
    put(csvRow(row(made.row)));
    if (++rows % TELL_EVERY_ROWS === 0) tell(made.done, made.total);
  }
}
