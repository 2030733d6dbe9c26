import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import type { Formats } from '../words/formats.ts';

/** A moisture content, and a dash where there is none. */
export const mcOrDash = (pct: number | null, formats: Formats): string =>
  pct === null ? '–' : formats.mc(pct);

/** What the meter showed, in its own unit, as it was typed or sent. */
export const rawText = (raw: number, unit: ReadingUnit, formats: Formats): string =>
  unit === 'pct' ? formats.rawPercent(raw) : formats.rawOhms(raw);
