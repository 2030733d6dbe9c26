import type { z } from 'zod';
import { messageOfIssue } from '../../../shared-core/contract/validation.ts';
import {
  a4SheetLayout,
  type LabelLayout,
  labelLayoutSchema,
  letterSheetLayout,
} from '../../../shared-core/labels/sheet.ts';
import {
  type DisplayUnits,
  mmFromShortLength,
  shortLengthFromMm,
  shortLengthUnit,
} from '../../../shared-core/units/length.ts';
import { wordsNow } from '../../words.ts';

export type LayoutSize = Exclude<keyof LabelLayout, 'kind'>;

/** The sizes as they stand in the form's fields, lengths in the person's units. */
export type LayoutDraft = Record<LayoutSize, number | null>;

export const counts: ReadonlySet<LayoutSize> = new Set(['columns', 'rows']);

/** In the order of the form. What a page of one label is asked for is its page alone. */
export const sheetSizes: readonly { size: LayoutSize; label: string }[] = [
  { size: 'pageWidthMm', label: 'Page width' },
  { size: 'pageHeightMm', label: 'Page height' },
  { size: 'columns', label: 'Labels across' },
  { size: 'rows', label: 'Labels down' },
  { size: 'labelWidthMm', label: 'Label width' },
  { size: 'labelHeightMm', label: 'Label height' },
  { size: 'leftMm', label: 'Left of the first label' },
  { size: 'topMm', label: 'Above the first label' },
  { size: 'columnGapMm', label: 'Between columns' },
  { size: 'rowGapMm', label: 'Between rows' },
];
export const singleSizes: readonly { size: LayoutSize; label: string }[] = [
  { size: 'pageWidthMm', label: 'Label width' },
  { size: 'pageHeightMm', label: 'Label height' },
];

/** Sheets that can be bought in most shops, to begin with. */
export const knownSheets: readonly { label: string; layout: LabelLayout }[] = [
  { label: 'Letter, 3 × 10', layout: letterSheetLayout },
  { label: 'A4, 3 × 10', layout: a4SheetLayout },
];

const sizes = sheetSizes.map(({ size }) => size);

export function draftOfLayout(layout: LabelLayout, units: DisplayUnits): LayoutDraft {
  const draft: LayoutDraft = { ...layout };
  for (const size of sizes) {
    if (!counts.has(size)) draft[size] = shortLengthFromMm(layout[size], units);
  }
  return draft;
}

export type LayoutProblems = Partial<Record<LayoutSize, string>>;

/**
 * The layout that a draft says, or what is wrong with it, by field.
 *
 * @param before  a size whose figure still stands as it was shown keeps this exact value: what is shown is rounded
 */
export function layoutOf(
  draft: LayoutDraft,
  before: LabelLayout,
  units: DisplayUnits,
): { layout: LabelLayout | null; problems: LayoutProblems } {
  const shown = draftOfLayout(before, units);
  const problems: LayoutProblems = {};
  const made: LabelLayout = { ...before };
  for (const size of sizes) {
    const typed = draft[size];
    if (typed === null) problems[size] = 'This size is needed.';
    else if (typed !== shown[size]) made[size] = counts.has(size) ? typed : mmFromShortLength(typed, units);
  }
  if (before.kind === 'single') {
    made.labelWidthMm = made.pageWidthMm;
    made.labelHeightMm = made.pageHeightMm;
  }
  if (Object.keys(problems).length > 0) return { layout: null, problems };
  const checked = labelLayoutSchema.safeParse(made);
  if (checked.success) return { layout: checked.data, problems };
  for (const issue of checked.error.issues) {
    const size = askedSize(String(issue.path[0]) as LayoutSize, before.kind);
    problems[size] ??= sentenceOfIssue(issue, size, units);
  }
  return { layout: null, problems };
}

/** A single label is its page: what is wrong with the one is said at the other. */
function askedSize(size: LayoutSize, kind: LabelLayout['kind']): LayoutSize {
  if (kind === 'sheet') return size;
  return size === 'labelHeightMm' || size === 'pageHeightMm' ? 'pageHeightMm' : 'pageWidthMm';
}

function sentenceOfIssue(issue: z.core.$ZodIssue, size: LayoutSize, units: DisplayUnits): string {
  const problem = messageOfIssue(issue);
  if (problem) return wordsNow().say(problem);
  const inUnits = (mm: unknown) =>
    counts.has(size) ? String(mm) : `${shortLengthFromMm(Number(mm), units)} ${shortLengthUnit(units)}`;
  if (issue.code === 'too_small') return `This must be at least ${inUnits(issue.minimum)}.`;
  if (issue.code === 'too_big') return `This must be at most ${inUnits(issue.maximum)}.`;
  return counts.has(size) ? 'This must be a whole number.' : 'This must be a number.';
}
