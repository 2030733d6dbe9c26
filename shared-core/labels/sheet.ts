import { z } from 'zod';
import { MM_PER_INCH } from '../measures.ts';
import { type Message, message } from '../words/message.ts';

/** Limits that a person meets are whole inches, so that a tape shows them as they are. */
const longestMm = 48 * MM_PER_INCH;
const marginMm = z
  .number()
  .min(0)
  .max(16 * MM_PER_INCH);

/** Rounding of inch sizes to mm must not refuse a sheet that fits. */
const toleranceMm = 0.01;

/** White that a label keeps inside its own edges, for stock fed a little crooked. */
const paddingMm = 1.5;

/** What a printer cannot ink along the edges of its paper, mm: common practice, no source. */
const unprintableMm = { sheet: 5, roll: 2 };

/** Smallest area that holds the QR code of a board ID beside the ID: that of a label of 25 × 13 mm on a roll. */
const smallestPrintableMm = { width: 21, height: 9 };

const layoutShape = z.object({
  /** `roll`: the page is one row of labels, as a label printer feeds them. */
  kind: z.enum(['sheet', 'roll']),
  pageWidthMm: z.number().min(20).max(longestMm),
  pageHeightMm: z.number().min(12).max(longestMm),
  columns: z.number().int().min(1).max(20),
  rows: z.number().int().min(1).max(60),
  labelWidthMm: z.number().positive().max(longestMm),
  labelHeightMm: z.number().positive().max(longestMm),
  /** White left of the first column and above the first row. */
  leftMm: marginMm,
  topMm: marginMm,
  columnGapMm: marginMm,
  rowGapMm: marginMm,
});

function extentMm(layout: z.infer<typeof layoutShape>) {
  return {
    widthMm: layout.columns * layout.labelWidthMm + (layout.columns - 1) * layout.columnGapMm,
    heightMm: layout.rows * layout.labelHeightMm + (layout.rows - 1) * layout.rowGapMm,
  };
}

/**
 * The part of every label that may carry ink, from its upper left corner. The same for all labels of a sheet, so that
 * a label that lies at the edge of the paper looks like the others.
 */
export function printableArea(layout: z.infer<typeof layoutShape>) {
  const extent = extentMm(layout);
  const edgeMm = unprintableMm[layout.kind];
  const insetXMm = Math.max(
    paddingMm,
    edgeMm - layout.leftMm,
    edgeMm - (layout.pageWidthMm - layout.leftMm - extent.widthMm),
  );
  const insetYMm = Math.max(
    paddingMm,
    edgeMm - layout.topMm,
    edgeMm - (layout.pageHeightMm - layout.topMm - extent.heightMm),
  );
  return {
    xMm: insetXMm,
    yMm: insetYMm,
    widthMm: layout.labelWidthMm - 2 * insetXMm,
    heightMm: layout.labelHeightMm - 2 * insetYMm,
  };
}

/** Sizes of a page of labels, mm. What does not fit its page is refused by a code of the catalog, its facts in `params`. */
export const labelLayoutSchema = layoutShape.superRefine((layout, check) => {
  const isRoll = layout.kind === 'roll';
  const refuse = (size: keyof typeof layoutShape.shape, { code, facts }: Message) =>
    check.addIssue({ code: 'custom', path: [size], message: code, params: facts });
  if (isRoll && layout.rows !== 1) {
    refuse('rows', message('labels.roll-has-one-row'));
    return;
  }
  const extent = extentMm(layout);
  const overRightMm = layout.leftMm + extent.widthMm - layout.pageWidthMm;
  const overBottomMm = layout.topMm + extent.heightMm - layout.pageHeightMm;
  const isTooWide = overRightMm > toleranceMm;
  const isTooTall = overBottomMm > toleranceMm;
  if (isTooWide) refuse('labelWidthMm', message('labels.too-wide', { overMm: overRightMm }));
  if (isTooTall) refuse('labelHeightMm', message('labels.too-tall', { overMm: overBottomMm }));
  if (isTooWide || isTooTall) return;
  const area = printableArea(layout);
  const narrowerMm = smallestPrintableMm.width - area.widthMm;
  const shorterMm = smallestPrintableMm.height - area.heightMm;
  if (narrowerMm > toleranceMm)
    refuse('labelWidthMm', message('labels.too-narrow-for-code', { missingMm: narrowerMm }));
  else if (shorterMm > toleranceMm) {
    refuse('labelHeightMm', message('labels.too-short-for-code', { missingMm: shorterMm }));
  }
});
export type LabelLayout = z.infer<typeof labelLayoutSchema>;

/** The page of a roll: one row of labels, with nothing around it but the gaps between them. */
export const asRoll = <Size extends number | null>(sizes: {
  columns: Size;
  labelWidthMm: Size;
  labelHeightMm: Size;
  columnGapMm: Size;
}) => {
  const { columns, labelWidthMm, labelHeightMm, columnGapMm } = sizes;
  const isKnown = columns !== null && labelWidthMm !== null && columnGapMm !== null;
  return {
    kind: 'roll' as const,
    columns,
    labelWidthMm,
    labelHeightMm,
    columnGapMm,
    pageWidthMm: isKnown ? columns * labelWidthMm + (columns - 1) * columnGapMm : null,
    pageHeightMm: labelHeightMm,
    rows: 1,
    leftMm: 0,
    topMm: 0,
    rowGapMm: 0,
  };
};

/** 30 labels of 2 5/8 by 1 in on a US Letter page, 1/8 in between columns. */
export const letterSheetLayout: LabelLayout = {
  kind: 'sheet',
  pageWidthMm: 215.9,
  pageHeightMm: 279.4,
  columns: 3,
  rows: 10,
  labelWidthMm: 66.675,
  labelHeightMm: 25.4,
  leftMm: 4.7625,
  topMm: 12.7,
  columnGapMm: 3.175,
  rowGapMm: 0,
};

/** 30 labels that tile an A4 page. */
export const a4SheetLayout: LabelLayout = {
  kind: 'sheet',
  pageWidthMm: 210,
  pageHeightMm: 297,
  columns: 3,
  rows: 10,
  labelWidthMm: 70,
  labelHeightMm: 29.7,
  leftMm: 0,
  topMm: 0,
  columnGapMm: 0,
  rowGapMm: 0,
};

/** A roll of labels of 60 by 30 mm, one after another. */
export const rollLayout: LabelLayout = {
  kind: 'roll',
  pageWidthMm: 60,
  pageHeightMm: 30,
  columns: 1,
  rows: 1,
  labelWidthMm: 60,
  labelHeightMm: 30,
  leftMm: 0,
  topMm: 0,
  columnGapMm: 0,
  rowGapMm: 0,
};

/** Upper left corner of a label on its page, pages counted from 0. */
export interface LabelPosition {
  page: number;
  xMm: number;
  yMm: number;
}

/** What is wrong with so many labels already used on the first page; null where nothing is. */
export function problemOfUsed(used: number, { columns, rows }: LabelLayout): Message | null {
  const labels = columns * rows;
  if (Number.isInteger(used) && used >= 0 && used < labels) return null;
  return message('labels.too-many-used', { labels, mostUsed: labels - 1 });
}

/**
 * Where the labels go: along the rows, from the top, page after page.
 *
 * @param used positions of the first page that are used up already
 * @throws     RangeError where `problemOfUsed` finds one
 */
export function labelPositions(count: number, layout: LabelLayout, used: number): LabelPosition[] {
  if (problemOfUsed(used, layout)) throw new RangeError(`${used} used labels leave none of this page.`);
  const perPage = layout.columns * layout.rows;
  return Array.from({ length: count }, (_, index) => {
    const slot = used + index;
    const onPage = slot % perPage;
    return {
      page: Math.floor(slot / perPage),
      xMm: layout.leftMm + (onPage % layout.columns) * (layout.labelWidthMm + layout.columnGapMm),
      yMm: layout.topMm + Math.floor(onPage / layout.columns) * (layout.labelHeightMm + layout.rowGapMm),
    };
  });
}
