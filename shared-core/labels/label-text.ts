import type { Operation } from '../drawing/page.ts';
import type { Shape, Shapes } from '../drawing/shapes.ts';
import type { LabelField } from './label-field.ts';
import type { LabelLine } from './label-lines.ts';
import {
  type Box,
  fits,
  isBlank,
  lineMm,
  NEARLY,
  type Part,
  partOf,
  type Row,
  rowOperations,
  rowWidthMm,
  SMALLEST_ID_PT,
  SMALLEST_PT,
  widestPt,
} from './text-row.ts';

/** How large a line is beside a detail. */
const WEIGHTS: Partial<Record<LabelField, number>> = { code: 1.4, call: 1.2, mc: 1.2, day: 1.2 };
const BOLD: readonly (LabelField | null)[] = ['code', 'call', 'mc'];
const HEADS: readonly (LabelField | null)[] = ['code', 'call', 'mc', 'day'];

export interface ShapedLine extends LabelLine {
  /** Of its forms, where the fonts have not all of them. */
  shapes: Shapes;
}

/** A row that is one of the label's large ones, and what it shows. */
interface LabelRow extends Row {
  field: LabelField | null;
}

const isHead = ({ field }: LabelRow): boolean => HEADS.includes(field);
const isCode = ({ field }: LabelRow): boolean => field === 'code';

const rowOf = ({ field, mark, shapes }: ShapedLine, text: string): LabelRow => ({
  field,
  parts: [
    partOf(
      text,
      BOLD.includes(field) ? 'bold' : 'regular',
      field === 'code' ? 'middle' : 'end',
      shapedIn(shapes, text),
    ),
  ],
  mark,
  weight: (field && WEIGHTS[field]) ?? 1,
});
const shapedIn = ({ texts, outlines }: Shapes, text: string): Part['shaped'] =>
  Object.hasOwn(texts, text) ? { shape: texts[text] as Shape, outlines } : null;

/** What the text needs, mm: with less than `id` the ID is too small to read; with `usual` it, the call and the MC are whole. */
interface Need {
  idMm: number;
  usualMm: number;
}
export interface TextRoom {
  width: Need;
  height: Need;
}

export function textRoomOf(lines: readonly ShapedLine[]): TextRoom {
  const rows = rowsAsWholes(lines);
  const heads = rows.filter(isHead);
  const widest = (of: readonly Row[], sizePt: number) =>
    Math.max(0, ...of.map((row) => rowWidthMm(row, sizePt)));
  const idRows = lines
    .filter(({ field }) => field === 'code')
    .flatMap((line) => halvesOf(line).map((half) => rowOf(line, half)));
  return {
    width: { idMm: widest(idRows, SMALLEST_ID_PT), usualMm: widest(heads, SMALLEST_PT) },
    height: { idMm: lineMm(SMALLEST_PT), usualMm: Math.min(6, rows.length) * lineMm(SMALLEST_PT) },
  };
}

/** Each line in its whole form, the day beside the MC. */
function rowsAsWholes(lines: readonly ShapedLine[]): LabelRow[] {
  const rows: LabelRow[] = [];
  for (const line of lines) {
    const row = rowOf(line, line.forms[0]);
    const last = rows.at(-1);
    if (last && areMcAndDay(last, row)) rows[rows.length - 1] = beside(last, row);
    else rows.push(row);
  }
  return rows;
}

const areMcAndDay = (one: LabelRow, other: LabelRow): boolean =>
  one.parts.length === 1 && [one.field, other.field].sort().join() === 'day,mc';
const beside = (one: LabelRow, other: LabelRow): LabelRow => ({
  ...one,
  parts: [...one.parts, ...other.parts],
});

/** An ID in two lines: after a hyphen near its middle where there is one. */
function halvesOf({ forms: [code] }: ShapedLine): string[] {
  const characters = Array.from(code);
  const middle = characters.length / 2;
  const hyphens = characters.flatMap((character, at) => (character === '-' ? [at + 1] : []));
  const near = hyphens
    .filter((at) => at < characters.length && Math.abs(at - middle) <= middle / 3)
    .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  const at = near[0] ?? Math.ceil(middle);
  return [characters.slice(0, at).join(''), characters.slice(at).join('')].filter((half) => half !== '');
}

/**
 * The lines of a label in a box, as large as they can be. What has no room at the smallest size is left out, from the
 * end; only the ID never is, and it is never cut: it goes on two lines, and becomes as small as it must.
 */
export function textOperations(lines: readonly ShapedLine[], box: Box): Operation[] {
  const rows = rowsFor(lines, box);
  const heads = rows.filter(isHead);
  const details = rows.filter((row) => !isHead(row));
  const units = unitsOf(box);
  const detailPt = Math.max(
    SMALLEST_PT,
    Math.min(
      (SMALLEST_PT * units) / (weightOf(heads) + details.length),
      ...details.map((row) => widestPt(row, box)),
    ),
  );
  const headUnits = units - (details.length * detailPt) / SMALLEST_PT;
  const codePt = Math.min(
    ...heads.filter(isCode).map((row) => Math.min(widestPt(row, box), headPt(row, heads, headUnits))),
  );
  const sized = rows.map((row) => {
    if (isCode(row)) return { row, sizePt: codePt };
    if (!isHead(row)) return { row, sizePt: detailPt };
    return {
      row,
      sizePt: Math.max(SMALLEST_PT, Math.min(widestPt(row, box), headPt(row, heads, headUnits))),
    };
  });
  const freeMm = box.heightMm - sized.reduce((sum, { sizePt }) => sum + lineMm(sizePt), 0);
  const gapMm = Math.min(freeMm / (sized.length + 1), lineMm(detailPt) / 3);
  let topMm = box.yMm + (freeMm - (sized.length - 1) * gapMm) / 2;
  return sized.flatMap(({ row, sizePt }) => {
    const operations = rowOperations(row, sizePt, topMm, box);
    topMm += lineMm(sizePt) + gapMm;
    return operations;
  });
}

/** The height of a box in lines of the smallest size. */
const unitsOf = ({ heightMm }: Box): number => (heightMm / lineMm(SMALLEST_PT)) * NEARLY;

const weightOf = (rows: readonly Row[]): number => rows.reduce((sum, { weight }) => sum + weight, 0);

/** Heads share what the details leave, by weight; where that is too little for their weights, they become more alike. */
function headPt({ weight }: Row, heads: readonly Row[], units: number): number {
  const total = weightOf(heads);
  if (units >= total) return (SMALLEST_PT * weight * units) / total;
  if (units <= heads.length) return (SMALLEST_PT * units) / heads.length;
  return SMALLEST_PT * (1 + ((weight - 1) * (units - heads.length)) / (total - heads.length));
}

/** The rows that there is room for, in their order. */
function rowsFor(lines: readonly ShapedLine[], box: Box): LabelRow[] {
  const units = unitsOf(box);
  const apart = lines.flatMap((line, index) => rowsOfLine(line, lines[index + 1], lines[index - 1], box));
  const rows = fitIn(apart, units) ? apart : packed(apart, box);
  while (!fitIn(rows, units)) {
    const last = rows.findLastIndex((row) => !isCode(row));
    if (last < 0) break;
    rows.splice(last, 1);
  }
  return rows;
}

/** Details need their room beside heads of their weights; heads alone may become more alike. */
function fitIn(rows: readonly LabelRow[], units: number): boolean {
  const heads = rows.filter(isHead);
  return heads.length === rows.length ? rows.length <= units : weightOf(rows) <= units;
}

function rowsOfLine(
  line: ShapedLine,
  next: ShapedLine | undefined,
  before: ShapedLine | undefined,
  box: Box,
): LabelRow[] {
  const whole = rowOf(line, line.forms[0]);
  if (isBlank(whole)) return [];
  if (line.field === 'code') {
    if (fits(whole, box)) return [whole];
    return halvesOf(line).map((half) => rowOf(line, half));
  }
  const [isFirst, other] = isMcAndDay(line, next) ? [true, next] : [false, before];
  if (isMcAndDay(line, other)) {
    const theirs = rowOf(other, other.forms[0]);
    const both = isFirst ? beside(whole, theirs) : beside(theirs, whole);
    if (fits(both, box)) return isFirst ? [both] : [];
    // Below each other, the day is the last to go.
    const inOrder = line.field === 'day' ? [whole, theirs] : [theirs, whole];
    return isFirst ? inOrder.filter((row) => fits(row, box)) : [];
  }
  const found = line.forms.map((form) => rowOf(line, form)).find((row) => fits(row, box));
  // A call that is cut could be read as another, and half a day as another day.
  const row = found ?? (isHead(whole) ? null : rowOf(line, line.forms.at(-1) as string));
  return row === null || isBlank(row) ? [] : [row];
}

const isMcAndDay = (one: ShapedLine, other: ShapedLine | undefined): other is ShapedLine =>
  other !== undefined && [one.field, other.field].sort().join() === 'day,mc';

/** Details beside each other where two fit in a row. */
function packed(rows: readonly LabelRow[], box: Box): LabelRow[] {
  const found: LabelRow[] = [];
  for (const next of rows) {
    const last = found.at(-1);
    const both = last && !isHead(last) && !isHead(next) ? beside(last, next) : null;
    if (both && fits(both, box)) found[found.length - 1] = both;
    else found.push(next);
  }
  return found;
}
