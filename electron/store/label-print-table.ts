import { type Columns, rowAppender } from './columns.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

interface LabelPrint {
  boardId: number;
  /** Of what the label said: another hash, and the label is out of date. */
  contentHash: string;
  printedAt: string;
}

const columns: Columns<LabelPrint> = {
  boardId: 'board_id',
  contentHash: 'content_hash',
  printedAt: 'printed_at',
};

/** What was printed on boards' labels. */
export function labelPrintReads(db: Db) {
  const newest = db.prepare<[number], { contentHash: string }>(
    `SELECT content_hash AS contentHash FROM label_print l WHERE board_id = ? AND ${holds('l')}
     ORDER BY id DESC LIMIT 1`,
  );
  return {
    /** Of the board's newest label; undefined where none was printed. */
    newestHash: (boardId: number): string | undefined => newest.get(boardId)?.contentHash,
  };
}

export function labelPrintWrites(db: Db) {
  const append = rowAppender(db, 'label_print', columns);
  return {
    add: (print: LabelPrint): void => {
      append(print);
    },
  };
}
