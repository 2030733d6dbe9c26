import { z } from 'zod';
import { calibrationSchema, exactPrinter } from './calibration.ts';
import { labelFieldsSchema, usualFields } from './label-field.ts';
import { a4SheetLayout, labelLayoutSchema, letterSheetLayout, rollLayout } from './sheet.ts';

/** How the ID is printed for a scanner. */
export const labelCodeSchema = z.enum(['qr', 'code-128', 'none']);
export type LabelCode = z.infer<typeof labelCodeSchema>;

/** Dots to the inch of thermal label printers; others print fine enough not to be asked. */
export const dotsPerInchSchema = z.union([z.literal(203), z.literal(300), z.literal(600)]);

/** A sheet or roll of labels that a person has, with what is printed on it and how it comes out of their printer. */
export const labelPaperSchema = z.object({
  /** Made where the paper is added. */
  id: z.string().min(1).max(40),
  /** As the person calls it; empty: it is named by its sizes. */
  name: z.string().trim().max(40),
  layout: labelLayoutSchema,
  fields: labelFieldsSchema,
  code: labelCodeSchema,
  /** The codes are made of whole dots of so many to the inch; null where the printer's dots are not known, or fine. */
  dotsPerInch: dotsPerInchSchema.nullable(),
  calibration: calibrationSchema,
});
export type LabelPaper = z.infer<typeof labelPaperSchema>;

/** At most so many papers, so that they can be chosen from. */
export const MOST_PAPERS = 20;

/** At least one, each with its own id. */
export const labelPapersSchema = z
  .array(labelPaperSchema)
  .min(1)
  .max(MOST_PAPERS)
  .refine((papers) => new Set(papers.map(({ id }) => id)).size === papers.length);

const ordinary = {
  name: '',
  fields: [...usualFields],
  code: 'qr',
  dotsPerInch: null,
  calibration: exactPrinter,
} as const satisfies Partial<LabelPaper>;

/** The papers to begin with. */
export const usualPapers: LabelPaper[] = [
  { ...ordinary, id: 'sheet', layout: letterSheetLayout },
  { ...ordinary, id: 'a4-sheet', layout: a4SheetLayout },
  { ...ordinary, id: 'roll', layout: rollLayout, dotsPerInch: 203 },
];

const earlierLayoutsSchema = z.object({
  sheet: labelLayoutSchema,
  single: z
    .looseObject({ kind: z.literal('single') })
    .transform((layout) => ({ ...layout, kind: 'roll' }))
    .pipe(labelLayoutSchema),
});

/** The papers of a yard whose settings have one sheet and one single label instead; the usual ones where they have neither. */
export function papersOfEarlier(labelLayouts: unknown): LabelPaper[] {
  const { success, data } = earlierLayoutsSchema.safeParse(labelLayouts);
  if (!success) return usualPapers;
  return [
    { ...ordinary, id: 'sheet', layout: data.sheet },
    { ...ordinary, id: 'roll', layout: data.single },
  ];
}
