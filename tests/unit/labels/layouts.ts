import fc from 'fast-check';
import { type LabelLayout, labelLayoutSchema } from '../../../shared-core/labels/sheet.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Every layout that the settings accept, the smallest labels among them. */
export const anyLayout: fc.Arbitrary<LabelLayout> = fc
  .record({
    columns: fc.integer({ min: 1, max: 5 }),
    rows: fc.integer({ min: 1, max: 12 }),
    labelWidthMm: mm(24, 200),
    labelHeightMm: mm(12, 150),
    leftMm: mm(0, 30),
    topMm: mm(0, 30),
    columnGapMm: mm(0, 10),
    rowGapMm: mm(0, 10),
    rightMm: mm(0, 30),
    bottomMm: mm(0, 30),
  })
  .map(({ rightMm, bottomMm, ...sizes }) => ({
    kind: 'sheet' as const,
    ...sizes,
    pageWidthMm:
      sizes.leftMm + sizes.columns * sizes.labelWidthMm + (sizes.columns - 1) * sizes.columnGapMm + rightMm,
    pageHeightMm:
      sizes.topMm + sizes.rows * sizes.labelHeightMm + (sizes.rows - 1) * sizes.rowGapMm + bottomMm,
  }))
  .filter((layout) => labelLayoutSchema.safeParse(layout).success);
