import { LEAST_METER_PCT } from '../wood/moisture/correction-uncertainty.ts';
import { FIBER_SATURATION_PCT } from '../wood/moisture/fiber-saturation.ts';
import type { Words } from '../words/words.ts';
import { type CallMark, callMarks } from './call-mark.ts';
import type { LabelContent, LabelFinding } from './label.ts';

/**
 * Pin meters are reliable from about 6 to 30 % MC and only qualitative above (Wood Handbook, chapter 13), which a
 * label must not hide behind a decimal.
 */
const RELIABLE = { minPct: LEAST_METER_PCT, maxPct: FIBER_SATURATION_PCT };

/**
 * A line of a label in its whole form, then shorter ones for where that one is too wide. The last is cut where even it
 * is; an empty one leaves the line out instead.
 */
export type Detail = readonly [whole: string, ...shorter: string[]];

/** The lines of one label as one person reads them, in order of importance. */
export interface LabelLines {
  code: string;
  /** Null where there is none yet. */
  call: (CallMark & { word: string }) | null;
  /** The day of the call and the MC; without a call the day is empty, and the MC says why. */
  day: string;
  mc: string;
  details: Detail[];
}

/** The lines of a label, the same on the preview, on paper and in the PDF. */
export function labelLines(content: LabelContent, words: Words): LabelLines {
  const { say, formats } = words;
  const { code, speciesName, endUseName, latest } = content;
  const details: Detail[] = [
    [speciesName],
    sizeLine(content, words),
    // "Furniture and cabinets, heated rooms" is still told from other uses by its beginning.
    [endUseName, endUseName.split(',')[0] as string],
  ];
  if (latest === null) return { code, call: null, day: '', mc: say('labels.no-readings'), details };
  if (latest.call === null) {
    const mc =
      latest.spotsRead === null ? say('labels.no-readings') : say('board.spots-read', latest.spotsRead);
    return { code, call: null, day: '', mc, details };
  }
  return {
    code,
    call: { ...callMarks[latest.call], word: say(`call.${latest.call}`) },
    // A label is read years later, so its day always has its year.
    day: formats.day(latest.at, 'year'),
    mc: averageLine(latest, words),
    details: [...details, [intervalLine(latest, words), ''], [shellCoreLine(latest, words), '']],
  };
}

function averageLine({ averagePct, averageIs, shellPct }: LabelFinding, { say, formats }: Words): string {
  if (averagePct === null)
    return shellPct === null ? say('labels.no-average') : say('labels.shell-alone', { shellPct });
  return averageIs === 'estimated' ? say('labels.estimated', { averagePct }) : formats.mc(averagePct);
}

/** Thickness, width and length; the thickness is the last to go. */
function sizeLine({ thickness, widthMm, lengthMm }: LabelContent, { formats }: Words): Detail {
  const sizes = [
    formats.thickness(thickness),
    widthMm === null ? '' : formats.shortLength(widthMm),
    lengthMm === null ? '' : formats.longLength(lengthMm),
  ];
  const first = (count: number) =>
    sizes
      .slice(0, count)
      .filter((size) => size !== '')
      .join(' × ');
  return [first(3), first(2), first(1)];
}

function intervalLine({ averagePct, lowPct, highPct }: LabelFinding, { say }: Words): string {
  if (averagePct === null) return '';
  if (averagePct > RELIABLE.maxPct) return say('labels.rough-over', { limitPct: RELIABLE.maxPct });
  if (averagePct < RELIABLE.minPct) return say('labels.rough-under', { limitPct: RELIABLE.minPct });
  if (lowPct === null || highPct === null) return '';
  return say('labels.likely', { likelyInterval: { minPct: lowPct, maxPct: highPct } });
}

function shellCoreLine({ shellPct, corePct }: LabelFinding, { say }: Words): string {
  if (shellPct !== null && corePct !== null) return say('labels.shell-core', { shellPct, corePct });
  if (shellPct !== null) return say('labels.shell-only', { shellPct });
  if (corePct !== null) return say('labels.core-only', { corePct });
  return '';
}
