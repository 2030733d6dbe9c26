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
} from '../../../shared-core/units/length.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

export type LayoutSize = Exclude<keyof LabelLayout, 'kind'>;

/** The sizes as typed, lengths in the person's units. */
export type LayoutDraft = Record<LayoutSize, number | null>;

export const counts: ReadonlySet<LayoutSize> = new Set(['columns', 'rows']);

type SizeField = { size: LayoutSize; code: Code };

/** In the order of the form. A page that is one label has the size of its page alone. */
export const sheetSizes = [
  { size: 'pageWidthMm', code: 'settings.page-width' },
  { size: 'pageHeightMm', code: 'settings.page-height' },
  { size: 'columns', code: 'settings.columns' },
  { size: 'rows', code: 'settings.rows' },
  { size: 'labelWidthMm', code: 'settings.label-width' },
  { size: 'labelHeightMm', code: 'settings.label-height' },
  { size: 'leftMm', code: 'settings.left-margin' },
  { size: 'topMm', code: 'settings.top-margin' },
  { size: 'columnGapMm', code: 'settings.column-gap' },
  { size: 'rowGapMm', code: 'settings.row-gap' },
] as const satisfies readonly SizeField[];
export const singleSizes = [
  { size: 'pageWidthMm', code: 'settings.label-width' },
  { size: 'pageHeightMm', code: 'settings.label-height' },
] as const satisfies readonly SizeField[];

/** Sheets that most shops sell, to begin with. */
export const knownSheets = [
  { code: 'settings.letter-sheet', layout: letterSheetLayout },
  { code: 'settings.a4-sheet', layout: a4SheetLayout },
] as const;

const sizes = sheetSizes.map(({ size }) => size);

export function draftOfLayout(layout: LabelLayout, units: DisplayUnits): LayoutDraft {
  const draft: LayoutDraft = { ...layout };
  for (const size of sizes) {
    if (!counts.has(size)) draft[size] = shortLengthFromMm(layout[size], units);
  }
  return draft;
}

export type LayoutProblems = Partial<Record<LayoutSize, Message>>;

/**
 * The layout that was typed, or what is wrong with it, by field.
 *
 * @param before  a size that was not typed over stays exactly as it is here: what is shown is rounded
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
    if (typed === null) problems[size] = message('settings.size-missing');
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
    const size = typedSize(String(issue.path[0]) as LayoutSize, before.kind);
    problems[size] ??= problemOfIssue(issue, size, units);
  }
  return { layout: null, problems };
}

/** A single label is its page: what is wrong with the label is shown at the field of the page. */
function typedSize(size: LayoutSize, kind: LabelLayout['kind']): LayoutSize {
  if (kind === 'sheet') return size;
  return size === 'labelHeightMm' || size === 'pageHeightMm' ? 'pageHeightMm' : 'pageWidthMm';
}

function problemOfIssue(issue: z.core.$ZodIssue, size: LayoutSize, units: DisplayUnits): Message {
  const named = messageOfIssue(issue);
  if (named) return named;
  const isCount = counts.has(size);
  // A tape shows sixteenths of an inch: a limit is shown as the last one within it.
  const step = isCount || units === 'metric' ? 1 : mmFromShortLength(1 / 16, units);
  if (issue.code === 'too_small') {
    if (issue.inclusive === false) return message('settings.size-not-positive');
    const least = Math.ceil(Number(issue.minimum) / step) * step;
    return isCount
      ? message('settings.count-too-small', { least })
      : message('settings.size-too-small', { leastMm: least });
  }
  if (issue.code === 'too_big') {
    const most = Math.floor(Number(issue.maximum) / step) * step;
    return isCount
      ? message('settings.count-too-large', { most })
      : message('settings.size-too-large', { mostMm: most });
  }
  return message(isCount ? 'settings.not-whole' : 'settings.not-a-number');
}
