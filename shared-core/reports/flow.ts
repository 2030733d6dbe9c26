import { type Face, lineOf, lineRoomMm } from '../drawing/fitted-text.ts';
import type { DrawnPage, Operation, PathOperation } from '../drawing/page.ts';
import { type Paper, paperSizes } from '../drawing/paper.ts';
import { wrappedText } from '../drawing/wrapped-text.ts';
import { type CallMark, callShapePath } from '../labels/call-mark.ts';
import { ascentEm, type Box, lineMm } from '../labels/text-row.ts';
import { MM_PER_POINT } from '../measures.ts';

/** What no printer fails to ink, with room for a hand or a staple: common practice, no source. */
const MARGIN_MM = 15;
const FOOTER_MM = 8;
const BODY_PT = 9.5;
/** No text of a report is smaller: 8 pt is read at arm's length (common practice, no source). */
const SMALL_PT = 8;
const HEADING_PT = 12.5;
const TITLE_PT = 20;
const RULE_MM = 0.2;
/** Between the text of a cell and its edges. */
const CELL_MM = { x: 1.8, y: 0.9 };

/** A text of a table; more than one is one below the other. */
export interface Cell {
  lines: readonly string[];
  face?: Face;
  /** Before its first line. */
  mark?: CallMark | null;
  /** That of the table unless given. */
  sizePt?: number;
  /** Under them, as small as can be. */
  below?: readonly string[];
  /** In place of text, a square of that side. */
  square?: { sideMm: number; draw(box: Box): readonly Operation[] };
}

export interface TableColumn {
  head: string;
  /** Its part of the width, beside those of the others. */
  share: number;
  align?: 'end';
}

export interface Table {
  columns: readonly TableColumn[];
  rows: readonly (readonly Cell[])[];
  /** A row is at least as high, and its cells have lines between them, to be written in. */
  writtenRowMm?: number;
  sizePt?: number;
}

const heightOf = (texts: readonly { sizePt: number }[]): number =>
  texts.reduce((sum, { sizePt }) => sum + lineMm(sizePt), 0);

type PlacedColumn = TableColumn & { leftMm: number; widthMm: number };

/** The text on one line, where it is short enough for that to be worth it: a date, a size, a call. */
export const onOneLine = (text: string): string => text.replaceAll(' ', '\u00A0');

/**
 * Each column's share of the width, but none narrower than its longest word, unless all of them are: then that one is
 * broken.
 */
function columnWidths(
  columns: readonly TableColumn[],
  rows: readonly (readonly Cell[])[],
  tablePt: number,
  widthMm: number,
): number[] {
  const wordMm = (text: string, face: Face, sizePt: number): number =>
    Math.max(...text.split(/[^\S\u00A0]+/).map((word) => lineRoomMm(lineOf(word), face, sizePt)));
  const least = columns.map(({ head }, index) =>
    rows.reduce(
      (most, row) => {
        const { lines, below = [], face = 'regular', mark, sizePt = tablePt, square } = row[index]!;
        const markMm = mark ? 1.1 * sizePt * MM_PER_POINT : 0;
        return Math.max(
          most,
          square?.sideMm ?? 0,
          ...lines.map((text) => wordMm(text, face, sizePt) + markMm),
          ...below.map((text) => wordMm(text, 'regular', SMALL_PT)),
        );
      },
      wordMm(head, 'bold', SMALL_PT),
    ),
  );
  const leastMm = least.map((mm) => mm + 2 * CELL_MM.x + 0.01);
  const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
  if (sum(leastMm) >= widthMm) return leastMm.map((mm) => (mm * widthMm) / sum(leastMm));
  // Columns that need more than their share have it, and the others share the rest.
  const isFixed = columns.map(() => false);
  for (;;) {
    const freeMm = widthMm - sum(leastMm.filter((_, index) => isFixed[index]));
    const shares = sum(columns.filter((_, index) => !isFixed[index]).map(({ share }) => share));
    const widths = columns.map(({ share }, index) =>
      isFixed[index] ? leastMm[index]! : (share / shares) * freeMm,
    );
    const short = widths.findIndex((mm, index) => !isFixed[index] && mm < leastMm[index]!);
    if (short === -1) return widths;
    isFixed[short] = true;
  }
}

/** What is printed along the lower edge of every page; its page number comes with it. */
export interface Footer {
  text: string;
  pageText: (page: number, pages: number) => string;
}

/** A line of text in operations, from its upper left corner. */
export function textLine(
  text: string,
  { xMm, topMm, face, sizePt }: { xMm: number; topMm: number; face: Face; sizePt: number },
): Operation {
  const baselineMm = topMm + ascentEm * sizePt * MM_PER_POINT;
  const shown = lineOf(text);
  return {
    kind: 'text',
    text: shown,
    xMm,
    baselineMm,
    sizePt,
    widthMm: lineRoomMm(shown, face, sizePt),
    face,
  };
}

/** A small line no wider than that, its end cut off where it must be. */
function cutLine(line: string, roomMm: number): string {
  const fits = (text: string) => lineRoomMm(text, 'regular', SMALL_PT) <= roomMm;
  if (fits(line)) return line;
  const letters = Array.from(line);
  while (letters.length > 0 && !fits(`${letters.join('')}…`)) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

export const rule = (x1: number, y1: number, x2: number, y2: number, strokeMm = RULE_MM): PathOperation => ({
  kind: 'path',
  d: `M${x1} ${y1}L${x2} ${y2}`,
  isFilled: false,
  strokeMm,
});

export const frame = (
  { xMm, yMm, widthMm, heightMm }: Box,
  more: Partial<PathOperation> = {},
): Operation => ({
  kind: 'path',
  d: `M${xMm} ${yMm}L${xMm + widthMm} ${yMm}L${xMm + widthMm} ${yMm + heightMm}L${xMm} ${yMm + heightMm}Z`,
  isFilled: false,
  strokeMm: RULE_MM,
  ...more,
});

/** The shape of a call about as high as a capital letter, on the line whose top is given. */
export function markOperation(
  { shape, filled }: CallMark,
  xMm: number,
  topMm: number,
  sizePt: number,
): Operation {
  const emMm = sizePt * MM_PER_POINT;
  const d = callShapePath(shape, xMm, topMm + (ascentEm - 0.74) * emMm, 0.74 * emMm);
  return { kind: 'path', d, isFilled: filled, strokeMm: 0.07 * emMm };
}

/**
 * Fills pages from the top: what does not fit goes to the next, a table row is never split, and its heads are on every
 * page. All in mm.
 */
export function createFlow(paper: Paper, footer: Footer) {
  const { widthMm: pageWidthMm, heightMm: pageHeightMm } = paperSizes[paper];
  const leftMm = MARGIN_MM;
  const widthMm = pageWidthMm - 2 * MARGIN_MM;
  const bottomMm = pageHeightMm - MARGIN_MM - FOOTER_MM;
  const pages: Operation[][] = [[]];
  let topMm = MARGIN_MM;
  /** Kept free at the right, for what is drawn there. */
  let rightMm = 0;

  const put = (...operations: readonly Operation[]) => pages.at(-1)!.push(...operations);
  const isAtTop = () => topMm <= MARGIN_MM;
  function newPage(): void {
    pages.push([]);
    topMm = MARGIN_MM;
  }
  /** Whatever comes next is on one page with so much below it. */
  function keep(heightMm: number): void {
    if (topMm + heightMm > bottomMm && !isAtTop()) newPage();
  }
  const gap = (mm: number): void => {
    if (!isAtTop()) topMm += mm;
  };

  function lines(text: string, face: Face, sizePt: number, indentMm = 0): void {
    const box = { leftMm: leftMm + indentMm, widthMm: widthMm - rightMm - indentMm };
    for (const line of wrappedText(text, face, sizePt, box.widthMm)) {
      keep(lineMm(sizePt));
      put(textLine(line, { xMm: box.leftMm, topMm, face, sizePt }));
      topMm += lineMm(sizePt);
    }
  }

  /** A cell in lines, at its size. */
  function cellOf(cell: Cell, columnMm: number, tablePt: number) {
    const { face = 'regular', mark = null, sizePt = tablePt, square } = cell;
    const indentMm = mark ? 1.1 * sizePt * MM_PER_POINT : 0;
    const roomMm = columnMm - 2 * CELL_MM.x - indentMm;
    const wrapped = (texts: readonly string[], lineFace: Face, linePt: number) =>
      texts
        .flatMap((text) => wrappedText(text, lineFace, linePt, roomMm))
        .map((text) => ({ text, face: lineFace, sizePt: linePt }));
    const texts = [...wrapped(cell.lines, face, sizePt), ...wrapped(cell.below ?? [], 'regular', SMALL_PT)];
    return {
      mark,
      sizePt,
      indentMm,
      texts,
      square,
      heightMm: Math.max(square?.sideMm ?? 0, heightOf(texts)),
    };
  }

  function tableRow(
    row: readonly Cell[],
    columns: readonly PlacedColumn[],
    { sizePt, leastMm, isWritten }: { sizePt: number; leastMm: number; isWritten: boolean },
    onNewPage: () => void,
  ): void {
    const cells = row.map((cell, index) => cellOf(cell, columns[index]!.widthMm, sizePt));
    const heightMm = Math.max(leastMm, 2 * CELL_MM.y + Math.max(...cells.map((cell) => cell.heightMm)));
    if (topMm + heightMm > bottomMm) {
      newPage();
      onNewPage();
    }
    for (const [index, cell] of cells.entries()) {
      const column = columns[index]!;
      const startMm = column.leftMm + CELL_MM.x;
      const atMm = topMm + CELL_MM.y;
      if (cell.square) {
        const { sideMm, draw } = cell.square;
        put(...draw({ xMm: startMm, yMm: atMm, widthMm: sideMm, heightMm: sideMm }));
      }
      if (cell.mark) put(markOperation(cell.mark, startMm, atMm, cell.sizePt));
      for (const [line, { text, face, sizePt: linePt }] of cell.texts.entries()) {
        const overMm = column.widthMm - 2 * CELL_MM.x - lineRoomMm(text, face, linePt);
        const xMm = startMm + (column.align === 'end' ? overMm : cell.indentMm);
        const lineTopMm = atMm + heightOf(cell.texts.slice(0, line));
        put(textLine(text, { xMm, topMm: lineTopMm, face, sizePt: linePt }));
      }
      if (isWritten && index > 0)
        put({ ...rule(column.leftMm, topMm, column.leftMm, topMm + heightMm), stroke: 'gray' });
    }
    topMm += heightMm;
    put({ ...rule(leftMm, topMm, leftMm + widthMm, topMm), stroke: 'gray' });
  }

  return {
    widthMm,
    keep,
    gap,
    title(text: string): void {
      lines(text, 'bold', TITLE_PT);
    },
    /** Kept with what follows. */
    heading(text: string, withMm = 20): void {
      gap(5);
      keep(lineMm(HEADING_PT) + withMm);
      lines(text, 'bold', HEADING_PT);
      topMm += 1;
    },
    text(text: string, face: Face = 'regular', sizePt = BODY_PT): void {
      lines(text, face, sizePt);
    },
    /** What can hurt someone, or what the sheet is not, in its own frame. */
    notice(texts: readonly string[]): void {
      if (texts.length === 0) return;
      const inset = 2.5;
      const all = texts.flatMap((text) => wrappedText(text, 'bold', BODY_PT, widthMm - 2 * inset));
      const heightMm = all.length * lineMm(BODY_PT) + 2 * inset;
      gap(3);
      keep(heightMm);
      put(frame({ xMm: leftMm, yMm: topMm, widthMm, heightMm }, { strokeMm: 0.5 }));
      for (const [index, line] of all.entries()) {
        put(
          textLine(line, {
            xMm: leftMm + inset,
            topMm: topMm + inset + index * lineMm(BODY_PT),
            face: 'bold',
            sizePt: BODY_PT,
          }),
        );
      }
      topMm += heightMm;
      gap(3);
    },
    /** Names with what is known under them, so many side by side. */
    facts(
      of: readonly (readonly [name: string, fact: string])[],
      { columns = 2 }: { columns?: number } = {},
    ): void {
      const columnMm = (widthMm - rightMm) / columns;
      for (let first = 0; first < of.length; first += columns) {
        const row = of.slice(first, first + columns).map(([name, fact]) => ({
          name: wrappedText(name, 'regular', SMALL_PT, columnMm - 4),
          fact: wrappedText(fact, 'bold', BODY_PT, columnMm - 4),
        }));
        const heightMm = Math.max(
          ...row.map(({ name, fact }) => name.length * lineMm(SMALL_PT) + fact.length * lineMm(BODY_PT)),
        );
        keep(heightMm);
        for (const [index, { name, fact }] of row.entries()) {
          let atMm = topMm;
          const xMm = leftMm + index * columnMm;
          for (const line of name) {
            put(textLine(line, { xMm, topMm: atMm, face: 'regular', sizePt: SMALL_PT }));
            atMm += lineMm(SMALL_PT);
          }
          for (const line of fact) {
            put(textLine(line, { xMm, topMm: atMm, face: 'bold', sizePt: BODY_PT }));
            atMm += lineMm(BODY_PT);
          }
        }
        topMm += heightMm + 1.5;
      }
    },
    /** A call as large as what is read first, with its shape. */
    call(word: string, mark: CallMark | null, sizePt = 16): void {
      const indentMm = mark ? 1.1 * sizePt * MM_PER_POINT : 0;
      keep(lineMm(sizePt));
      if (mark) put(markOperation(mark, leftMm, topMm, sizePt));
      lines(word, 'bold', sizePt, indentMm);
    },
    /** What shapes mean, side by side. */
    legend(of: readonly { mark: CallMark; text: string }[]): void {
      if (of.length === 0) return;
      keep(lineMm(SMALL_PT));
      let xMm = leftMm;
      for (const { mark, text } of of) {
        const textMm = lineRoomMm(lineOf(text), 'regular', SMALL_PT);
        if (xMm > leftMm && xMm + 5 + textMm > leftMm + widthMm) {
          xMm = leftMm;
          topMm += lineMm(SMALL_PT);
        }
        put(markOperation(mark, xMm, topMm, SMALL_PT));
        put(textLine(text, { xMm: xMm + 3.5, topMm, face: 'regular', sizePt: SMALL_PT }));
        xMm += 3.5 + textMm + 6;
      }
      topMm += lineMm(SMALL_PT);
    },
    table({ columns, rows, writtenRowMm, sizePt = SMALL_PT }: Table): void {
      const widths = columnWidths(columns, rows, sizePt, widthMm);
      let atMm = leftMm;
      const placed = columns.map((column, index): PlacedColumn => {
        const each = { ...column, leftMm: atMm, widthMm: widths[index]! };
        atMm += each.widthMm;
        return each;
      });
      const isWritten = writtenRowMm !== undefined;
      const heads = () => {
        put(rule(leftMm, topMm, leftMm + widthMm, topMm, 0.4));
        const cells = columns.map(({ head }): Cell => ({ lines: [head], face: 'bold' }));
        tableRow(cells, placed, { sizePt: SMALL_PT, leastMm: 0, isWritten }, () => undefined);
      };
      keep(3 * lineMm(sizePt) + Math.max(writtenRowMm ?? 0, 10));
      heads();
      const look = { sizePt, leastMm: writtenRowMm ?? 0, isWritten };
      for (const row of rows) tableRow(row, placed, look, heads);
    },
    /** Something drawn, in a box as wide as the page. */
    drawing(heightMm: number, draw: (box: Box) => readonly Operation[]): void {
      keep(heightMm);
      put(...draw({ xMm: leftMm, yMm: topMm, widthMm, heightMm }));
      topMm += heightMm;
    },
    /** Something drawn at the right, beside what comes next. */
    beside(draw: (box: Box) => readonly Operation[], sizeMm: number): void {
      keep(sizeMm);
      put(...draw({ xMm: leftMm + widthMm - sizeMm, yMm: topMm, widthMm: sizeMm, heightMm: sizeMm }));
    },
    /** Texts and facts that leave room for what is drawn at the right. */
    narrow(mm: number, fill: () => void): void {
      rightMm = mm + 4;
      fill();
      rightMm = 0;
    },
    /** How far down the page it is. */
    get topMm(): number {
      return topMm;
    },
    /** Not above this far down: below what was drawn beside. */
    downTo(mm: number): void {
      topMm = Math.max(topMm, mm);
    },
    /** The pages, each with its number. */
    pages(): DrawnPage[] {
      return pages.map((operations, index) => {
        const number = textLine(footer.pageText(index + 1, pages.length), {
          xMm: 0,
          topMm: 0,
          face: 'regular',
          sizePt: SMALL_PT,
        }) as Extract<Operation, { kind: 'text' }>;
        const baselineMm = pageHeightMm - MARGIN_MM;
        const numberMm = leftMm + widthMm - number.widthMm;
        const roomMm = widthMm - number.widthMm - 5;
        const text = cutLine(lineOf(footer.text), roomMm);
        return {
          widthMm: pageWidthMm,
          heightMm: pageHeightMm,
          operations: [
            ...operations,
            { ...rule(leftMm, baselineMm - 4.5, leftMm + widthMm, baselineMm - 4.5), stroke: 'gray' },
            {
              kind: 'text',
              text,
              xMm: leftMm,
              baselineMm,
              sizePt: SMALL_PT,
              widthMm: lineRoomMm(text, 'regular', SMALL_PT),
              face: 'regular',
            },
            { ...number, xMm: numberMm, baselineMm },
          ],
        };
      });
    },
  };
}
export type Flow = ReturnType<typeof createFlow>;
