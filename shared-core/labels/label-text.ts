import type { Operation } from '../drawing/page.ts';
import type { CallMark } from './call-mark.ts';
import type { LabelLines } from './label-lines.ts';
import {
  type Box,
  fits,
  isBlank,
  lineMm,
  NEARLY,
  type Part,
  type Row,
  rowOperations,
  rowWidthMm,
  SMALLEST_PT,
  widestPt,
} from './text-row.ts';

const detail = (text: string): Row => ({
  parts: [{ text, face: 'regular', cut: 'end' }],
  mark: null,
  weight: 1,
});

/** ID, call, and the day with the MC beside it: the last to go. */
function headsOf({ code, call, day, mc }: LabelLines) {
  const mcPart: Part = { text: mc, face: 'bold', cut: 'end' };
  const dayPart: Part = { text: day, face: 'regular', cut: 'end' };
  const head = (parts: Part[], mark: CallMark | null = null): Row => ({ parts, mark, weight: 1.2 });
  return {
    id: { ...head([{ text: code, face: 'bold', cut: 'middle' }]), weight: 1.4 },
    call: call && head([{ text: call.word, face: 'bold', cut: 'end' }], call),
    mcAndDay: head(day === '' ? [mcPart] : [mcPart, dayPart]),
    day: head([dayPart]),
    mc: head([mcPart]),
  };
}

/** What the text needs, mm: with less than `least` the call or its day is cut; with `usual` the ID and the MC are whole. */
interface Need {
  leastMm: number;
  usualMm: number;
}
export interface TextRoom {
  width: Need;
  height: Need;
}

export function textRoomOf(lines: LabelLines): TextRoom {
  const { id, call, mcAndDay, day } = headsOf(lines);
  const widest = (rows: readonly (Row | null)[]) =>
    Math.max(...rows.map((row) => (row === null ? 0 : rowWidthMm(row, SMALLEST_PT))));
  return {
    width: { leastMm: widest([call, day]), usualMm: widest([id, call, mcAndDay]) },
    height: { leastMm: 3 * lineMm(SMALLEST_PT), usualMm: 6 * lineMm(SMALLEST_PT) },
  };
}

/** The lines of a label in a box, as large as they can be. What has no room at the smallest size is left out. */
export function textOperations(lines: LabelLines, box: Box): Operation[] {
  const { heads, details } = rowsFor(lines, box);
  const detailPt = Math.max(
    SMALLEST_PT,
    Math.min(
      (SMALLEST_PT * unitsOf(box)) / (weightOf(heads) + details.length),
      ...details.map((row) => widestPt(row, box)),
    ),
  );
  const headUnits = unitsOf(box) - (details.length * detailPt) / SMALLEST_PT;
  const rows = [
    ...heads.map((row) => ({ row, sizePt: Math.min(widestPt(row, box), headPt(row, heads, headUnits)) })),
    ...details.map((row) => ({ row, sizePt: detailPt })),
  ];
  const freeMm = box.heightMm - rows.reduce((sum, { sizePt }) => sum + lineMm(sizePt), 0);
  const gapMm = Math.min(freeMm / (rows.length + 1), lineMm(detailPt) / 3);
  let topMm = box.yMm + (freeMm - (rows.length - 1) * gapMm) / 2;
  return rows.flatMap(({ row, sizePt }) => {
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
  return SMALLEST_PT * (1 + ((weight - 1) * (units - heads.length)) / (total - heads.length));
}

/** The rows that there is room for, most important first. */
function rowsFor(lines: LabelLines, box: Box): { heads: Row[]; details: Row[] } {
  const { id, call, mcAndDay, day, mc } = headsOf(lines);
  const units = unitsOf(box);
  const rest = fits(mcAndDay, box) ? [mcAndDay] : [day, mc];
  const heads = [id, call, ...rest].filter((row): row is Row => row !== null && !isBlank(row));
  const apart = lines.details
    .map((forms): Row => {
      const rows = forms.map(detail);
      return rows.find((row) => fits(row, box)) ?? (rows.at(-1) as Row);
    })
    .filter((row) => !isBlank(row));
  const rows = Math.floor(units - weightOf(heads));
  const details = apart.length <= rows ? apart : packed(apart, box).slice(0, Math.max(0, rows));
  return { heads: heads.slice(0, Math.floor(units)), details };
}

/** Details beside each other where two fit in a row. */
function packed(details: readonly Row[], box: Box): Row[] {
  const rows: Row[] = [];
  for (const next of details) {
    const last = rows.at(-1);
    const both = last && { ...last, parts: [...last.parts, ...next.parts] };
    if (both && fits(both, box)) rows[rows.length - 1] = both;
    else rows.push(next);
  }
  return rows;
}
