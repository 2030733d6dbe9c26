import { isDepthUnknown } from '../probing/readings/depth-read.ts';
import type { AverageIs } from '../probing/readings/estimate.ts';
import type { Depth, JudgedReading } from '../probing/readings/reading.ts';
import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import type { Formats } from '../words/formats.ts';
import type { Words } from '../words/words.ts';

/** A moisture content, and a dash where there is none. */
export const mcOrDash = (pct: number | null, formats: Formats): string =>
  pct === null ? '–' : formats.mc(pct);

/** An average, and that it is higher where a reading is above the scale of its meter; a dash where there is none. */
export const averageText = (
  { averagePct, averageIs }: { averagePct: number | null; averageIs: AverageIs },
  { say, formats }: Words,
): string =>
  averagePct !== null && averageIs === 'above'
    ? say('board.average-above', { averagePct })
    : mcOrDash(averagePct, formats);

/** What the meter showed, in its own unit, as it was typed or sent. */
export const rawText = (raw: number, unit: ReadingUnit, formats: Formats): string =>
  unit === 'pct' ? formats.rawPercent(raw) : formats.rawOhms(raw);

/** What the meter showed of a reading, and that it showed only that it is more. */
export function shownText(
  { raw, unit, isAbove = false }: Pick<JudgedReading, 'raw' | 'unit' | 'isAbove'>,
  { say, formats }: Words,
): string {
  const shownValue = rawText(raw, unit, formats);
  return isAbove ? say('reading.above', { shownValue }) : shownValue;
}

/**
 * What a reading is called, by what the meter showed.
 * @param depth  what it tells
 */
export const readingName = (
  reading: Pick<JudgedReading, 'raw' | 'unit' | 'isAbove' | 'spot'>,
  depth: Depth,
  words: Words,
): string =>
  words.say('reading.name', {
    depth: isDepthUnknown(reading) ? 'unknown' : depth,
    shownValue: shownText(reading, words),
  });
