import { LEAST_METER_PCT } from '../wood/moisture/correction.ts';
import { FIBER_SATURATION_PCT } from '../wood/moisture/fiber-saturation.ts';
import type { Words } from '../words/words.ts';
import { type CallMark, callMarks } from './call-mark.ts';
import type { LabelContent, LabelFinding } from './label.ts';

/**
 * Pin meters are reliable from about 6 to 30 % MC and only qualitative above (Wood Handbook, chapter 13), which a
 * label must not hide behind a decimal.
 */
const RELIABLE = { minPct: LEAST_METER_PCT, maxPct: FIBER_SATURATION_PCT };

/** The lines of one label as one person reads them; empty where there is nothing to say. */
export interface LabelLines {
  code: string;
  speciesName: string;
  thickness: string;
  mc: string;
  /** The day of the MC. */
  day: string;
  /** How exact the MC is. */
  interval: string;
  shellCore: string;
  /** Null before the first round. */
  call: (CallMark & { letter: string; word: string }) | null;
}

/** The lines of a label, the same on the preview, on paper and in the PDF. */
export function labelLines({ code, speciesName, thickness, latest }: LabelContent, words: Words): LabelLines {
  const { say, formats } = words;
  const board = { code, speciesName, thickness: formats.thickness(thickness) };
  if (latest === null) {
    return { ...board, mc: say('labels.no-readings'), day: '', interval: '', shellCore: '', call: null };
  }
  return {
    ...board,
    mc: latest.averagePct === null ? say('labels.no-average') : formats.mc(latest.averagePct),
    // A label is read years later, so its day always has its year.
    day: formats.day(latest.at, 'year'),
    interval: intervalLine(latest, words),
    shellCore: shellCoreLine(latest, words),
    call: {
      ...callMarks[latest.call],
      letter: say(`call.letter-${latest.call}`),
      word: say(`call.${latest.call}`),
    },
  };
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
