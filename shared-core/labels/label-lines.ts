import { needsShape } from '../drawing/fitted-text.ts';
import { readAtUnknown, toldDepths } from '../probing/readings/told-depths.ts';
import { LEAST_METER_PCT } from '../wood/moisture/correction-uncertainty.ts';
import { FIBER_SATURATION_PCT } from '../wood/moisture/fiber-saturation.ts';
import type { Words } from '../words/words.ts';
import { type CallMark, callMarks } from './call-mark.ts';
import type { LabelContent, LabelFinding } from './label.ts';
import { type LabelField, usualFields } from './label-field.ts';

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

export interface LabelLine {
  /** What it shows of the board; null for a remark about the label itself. */
  field: LabelField | null;
  forms: Detail;
  /** A call has its mark before its word. */
  mark: CallMark | null;
}

/** The lines of a label in the order of its fields, the same on the preview, on paper and in the PDF; none is empty. */
export function labelLines(
  content: LabelContent,
  words: Words,
  fields: readonly LabelField[] = usualFields,
): LabelLine[] {
  const { latest } = content;
  return fields
    .map((field) => ({
      field,
      forms: formsOf[field](content, words, fields),
      mark: field === 'call' && latest?.call ? callMarks[latest.call] : null,
    }))
    .filter(({ forms: [whole] }) => whole !== '');
}

/** The texts of lines of which the fonts have not all, each once. */
export const textsToShape = (lines: readonly LabelLine[]): string[] =>
  [...new Set(lines.flatMap(({ forms }) => forms))].filter(needsShape);

const formsOf: Record<
  LabelField,
  (content: LabelContent, words: Words, fields: readonly LabelField[]) => Detail
> = {
  code: ({ code }) => [code],
  call: ({ latest }, { say }) =>
    latest?.call ? [say(`call.${latest.call}`), say(`call.letter-${latest.call}`)] : [''],
  mc: ({ latest }, words) => [mcLine(latest, words)],
  // A label is read years later, so its day always has its year. Without a call, the MC says why, and has no day.
  day: ({ latest }, { formats }) => [latest?.call ? formats.day(latest.at, 'year') : ''],
  species: ({ speciesName }, { formats }) => [formats.named(speciesName)],
  size: (content, words) => sizeLine(content, words),
  thickness: ({ thickness }, { formats }) => [formats.thickness(thickness)],
  // "Furniture and cabinets, heated rooms" is still told from other uses by its beginning.
  use: ({ endUseName }, { formats }) => {
    const name = formats.named(endUseName);
    return [name, name.split(',')[0] as string];
  },
  target: ({ targetRange }, { say }) => [say('labels.target', { targetRange })],
  likely: ({ latest }, words) => [latest?.call ? intervalLine(latest, words) : '', ''],
  'shell-core': ({ latest }, words, fields) => [latest?.call ? shellCoreLine(latest, words, fields) : '', ''],
  stack: ({ stackName }) => [stackName],
  place: ({ placeName }) => [placeName],
  sawn: ({ sawnOn }, { say, formats }) => [
    sawnOn === null ? '' : say('labels.sawn', { day: formats.day(sawnOn, 'year') }),
  ],
  log: ({ log }, { say }) => [log === '' ? '' : say('labels.log', { log })],
};

function mcLine(latest: LabelFinding | null, words: Words): string {
  const { say } = words;
  if (latest === null) return say('labels.no-readings');
  if (latest.call === null)
    return latest.spotsRead === null ? say('labels.no-readings') : say('board.spots-read', latest.spotsRead);
  const shownText = averageLine(latest, words);
  const isAny = (latest.averagePct ?? latest.shellPct ?? readAtUnknown(latest)) !== null;
  return isAny && latest.isQuestionable ? say('labels.questionable', { shownText }) : shownText;
}

function averageLine(latest: LabelFinding, { say, formats }: Words): string {
  const { averagePct, averageIs, shellPct } = latest;
  const mcPct = averagePct ?? readAtUnknown(latest);
  if (latest.isDepthUnknown && mcPct !== null && averageIs !== 'above')
    return say(averageIs === 'estimated' ? 'labels.estimated-depth-unknown' : 'labels.depth-unknown', {
      mcPct,
    });
  if (averagePct === null)
    return shellPct === null ? say('labels.no-average') : say('labels.shell-alone', { shellPct });
  if (averageIs === 'above') return say('board.average-above', { averagePct });
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

function shellCoreLine(latest: LabelFinding, { say }: Words, fields: readonly LabelField[]): string {
  const { averagePct } = latest;
  const { shellPct, corePct } = toldDepths(latest);
  // Without an average, the line of the MC has the shell already.
  if (averagePct === null && shellPct !== null && fields.includes('mc'))
    return corePct === null ? say('labels.core-not-probed') : say('labels.core-alone', { corePct });
  if (shellPct !== null && corePct !== null) return say('labels.shell-core', { shellPct, corePct });
  if (shellPct !== null) return say('labels.shell-only', { shellPct });
  if (corePct !== null) return say('labels.core-only', { corePct });
  return '';
}
