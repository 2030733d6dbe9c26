import type { LabelContent, LabelFinding } from '../../../shared-core/labels/label.ts';
import { type LabelPaper, usualPapers } from '../../../shared-core/labels/paper.ts';
import type { LabelLayout } from '../../../shared-core/labels/sheet.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';

export const wordsIn = (units: 'metric' | 'imperial', locale = 'en-US') =>
  createWords({ catalog: english, locale, timeZone: 'America/Chicago', units, today: null });

/** One board of an invented yard, probed and too wet for its place. */
export const aFinding: LabelFinding = {
  at: '2026-03-12T17:30:00.000Z',
  averagePct: 12.36,
  averageIs: 'read' as const,
  shellPct: 11.2,
  corePct: 13.1,
  lowPct: 11.55,
  highPct: 13.17,
  call: 'bring-in',
  spotsRead: null,
};
export const aLabel: LabelContent = {
  code: 'OAK-07',
  speciesName: 'Northern red oak',
  thickness: { thicknessMm: 27, quarters: null },
  widthMm: 180,
  lengthMm: 2400,
  endUseName: 'Furniture and cabinets, heated rooms',
  targetRange: { minPct: 6, maxPct: 8 },
  stackName: 'North stack',
  placeName: 'Pole shed',
  log: 'B',
  sawnOn: '2024-05-02',
  latest: aFinding,
};

/** A paper of that layout, with all else as it is to begin with, on a printer that makes dots of any size. */
export const paperOf = (layout: LabelLayout, more: Partial<LabelPaper> = {}): LabelPaper => ({
  ...(usualPapers[0] as LabelPaper),
  layout,
  ...more,
});
