/** What the sheets about a board have in common. */
import type { BuyerSheet } from '../contract/report.ts';
import type { LatestFinding } from '../contract/yard.ts';
import type { Operation } from '../drawing/page.ts';
import { darkRuns, qrCode, quietZoneModules } from '../labels/qr.ts';
import type { Box } from '../labels/text-row.ts';
import { readAtUnknown } from '../probing/readings/told-depths.ts';
import { averageText, mcOrDash } from '../record-words/reading-texts.ts';
import { thicknessOf } from '../words/message.ts';
import type { Words } from '../words/words.ts';
import { type Cell, type Flow, onOneLine } from './flow.ts';

/** Read by a phone at arm's length off paper: common practice, no source. */
export const QR_MM = 30;

export const cell = (text: string, more: Partial<Cell> = {}): Cell => ({ lines: [text], ...more });
/** Of a text that is short enough for one line. */
export const short = (text: string, more: Partial<Cell> = {}): Cell => cell(onOneLine(text), more);

/** The average of a round in a table; a questionable one says so. */
export const averageCell = (
  found: Pick<LatestFinding, 'averagePct' | 'averageIs' | 'isQuestionable'> | null,
  words: Words,
): Cell =>
  found !== null && found.averagePct !== null && found.isQuestionable
    ? cell(words.say('report.questionable', { averagePct: found.averagePct }))
    : short(found === null ? '–' : averageText(found, words), { face: 'bold' });

export type Fact = readonly [name: string, fact: string];

/** What a board measures: "8/4 × 7 7/8 in × 7 ft 10 in"; what is not known is left out. */
export function sizeText(
  {
    widthMm,
    lengthMm,
    ...board
  }: Pick<BuyerSheet['board'], 'thicknessMm' | 'thicknessQuarters' | 'widthMm' | 'lengthMm'>,
  { formats }: Words,
): string {
  return (
    [
      formats.thickness(thicknessOf(board)),
      widthMm === null ? '' : formats.shortLength(widthMm),
      lengthMm === null ? '' : formats.longLength(lengthMm),
    ]
      .filter((size) => size !== '')
      // "7 ft 10 in" stays on one line.
      .map((size) => size.replaceAll(' ', '\u00A0'))
      .join(' × ')
  );
}

/** The code as a square with its white around it, which fills a square box. */
export function checkSquare(checkCode: string, { xMm, yMm, widthMm }: Box): Operation[] {
  const code = qrCode(checkCode);
  const moduleMm = widthMm / (code.modules + 2 * quietZoneModules);
  const inset = quietZoneModules * moduleMm;
  return [{ kind: 'modules', xMm: xMm + inset, yMm: yMm + inset, moduleMm, rectangles: darkRuns(code) }];
}

/** The figures of a round, as a person reads them off the sheet. */
export function foundFacts(found: LatestFinding, words: Words): Fact[] {
  const { say, formats } = words;
  const { averagePct, averageIs, lowPct, highPct, isQuestionable, isDepthUnknown, at } = found;
  const average =
    averagePct === null
      ? say('report.no-average')
      : isQuestionable
        ? say('report.questionable', { averagePct })
        : averageText(found, words);
  return [
    [say('report.read-on'), formats.day(at, 'year')],
    [
      say(
        averageIs !== 'estimated'
          ? 'report.average'
          : isDepthUnknown
            ? 'board.average-estimated'
            : 'report.average-estimated',
      ),
      average,
    ],
    ...(averagePct !== null && !isQuestionable && lowPct !== null && highPct !== null
      ? [[say('report.likely'), formats.mcInterval({ minPct: lowPct, maxPct: highPct })] as const]
      : []),
    ...depthFacts(found, words),
  ];
}

/** What the shell and the core read; where nobody knows how deep it was, what was read. */
export function depthFacts(found: LatestFinding, { say, formats }: Words): Fact[] {
  const { shellPct, corePct, isDepthUnknown } = found;
  if (isDepthUnknown) return [[say('report.mc-depth-unknown'), mcOrDash(readAtUnknown(found), formats)]];
  return [
    [say('report.shell'), mcOrDash(shellPct, formats)],
    [say('report.core'), corePct === null ? say('report.not-read') : formats.mc(corePct)],
  ];
}

/** A person's own words, which may go on over pages. */
export function notePart(note: string, flow: Flow, { say }: Words): void {
  if (note.trim() === '') return;
  flow.gap(1);
  flow.text(say('board.note'), 'regular', 8);
  flow.text(note);
}

/** The code in letters, and what it is for. */
export function checkCodePart(flow: Flow, checkCode: string, { say }: Words): void {
  flow.heading(say('report.check-code'), 12);
  flow.text(checkCode, 'bold', 11);
  flow.gap(1);
  flow.text(say('report.check-how'));
}
