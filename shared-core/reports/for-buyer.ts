/** What sheets for buyers have in common. */
import type { BuyerSheet } from '../contract/report.ts';
import type { LatestFinding } from '../contract/yard.ts';
import { cautionsOfReady } from '../probing/calls/cautions.ts';
import { readAtUnknown } from '../probing/readings/told-depths.ts';
import { averageText } from '../record-words/reading-texts.ts';
import { LEAST_METER_PCT } from '../wood/moisture/correction-uncertainty.ts';
import { FIBER_SATURATION_PCT } from '../wood/moisture/fiber-saturation.ts';
import type { UseCaution } from '../wood/species/end-use.ts';
import type { Words } from '../words/words.ts';
import { type Flow, rule, textLine } from './flow.ts';

const inAll = (...sentences: string[]): string => sentences.filter((each) => each !== '').join(' ');

/** The MC of a board as its last round has it: the figure, and what is known of it. */
export function statedMc(found: LatestFinding | null, words: Words): { figure: string; known: string } {
  const { say, formats } = words;
  if (found === null) return { figure: say('report.buyer.not-probed'), known: '' };
  const { averagePct, averageIs, lowPct, highPct, shellPct, isQuestionable, isDepthUnknown } = found;
  const mcPct = readAtUnknown(found);
  if (averagePct === null && mcPct !== null)
    return {
      figure: formats.mc(mcPct),
      known: inAll(say('report.buyer.depth-unknown'), say('report.buyer.no-average')),
    };
  if (averagePct === null && shellPct !== null)
    return { figure: say('report.buyer.shell', { shellPct }), known: say('report.buyer.no-average') };
  if (averagePct === null) return { figure: '–', known: say('report.buyer.no-average') };
  const depth = isDepthUnknown ? say('report.buyer.depth-unknown') : '';
  if (isQuestionable)
    return { figure: formats.mc(averagePct), known: inAll(say('report.buyer.questionable'), depth) };
  if (averageIs === 'above')
    return { figure: averageText(found, words), known: inAll(say('board.above-scale'), depth) };
  const likely =
    lowPct === null || highPct === null
      ? ''
      : say('report.buyer.likely', { likelyInterval: { minPct: lowPct, maxPct: highPct } });
  if (averageIs !== 'estimated') return { figure: formats.mc(averagePct), known: inAll(likely, depth) };
  const known = inAll(
    isDepthUnknown ? say('report.buyer.estimated-only') : say('report.buyer.estimated'),
    likely,
    depth,
  );
  return { figure: say('report.buyer.about', { averagePct }), known };
}

/** When it was probed, and how long before the sheet was printed: "May 12, 2026 (4 months ago)". */
export const probedWhen = (at: string, printedAt: string, { say, formats }: Words): string =>
  say('report.buyer.probed', { dayName: formats.day(at, 'year'), agoName: formats.ago(at, printedAt) });

/** What the figures say and do not say. */
export function limitsPart(
  isAnyProbed: boolean,
  cautions: readonly UseCaution[],
  flow: Flow,
  { say }: Words,
): void {
  flow.gap(2);
  if (isAnyProbed) {
    const limits = { leastLimitPct: LEAST_METER_PCT, mostLimitPct: FIBER_SATURATION_PCT };
    flow.text(say('report.buyer.day'));
    flow.text(say('report.buyer.accuracy', limits));
  }
  flow.text(say(isAnyProbed ? 'report.buyer.changes' : 'report.buyer.changes-not-read'));
  // Whoever buys it may use it for something else than it was dried for.
  const ofUse = cautionsOfReady(cautions.filter((each) => each !== 'structural'));
  flow.notice([say('report.buyer.strength'), ...ofUse.map((each) => say(each))]);
}

const LINE_MM = 14;
/** So many letters fit a line even where they are wide. */
const MOST_ON_LINE = 36;

/** Whom it is for, for how much, and where the owner signs. */
export function signaturePart(
  { soldTo, priceText }: Pick<BuyerSheet, 'soldTo' | 'priceText'>,
  flow: Flow,
  { say }: Words,
): void {
  flow.keep(2 * LINE_MM + 8);
  const line = (left: string, right: string, leftText = '', rightText = '') =>
    flow.drawing(LINE_MM + 4, ({ xMm, yMm, widthMm }) => {
      const wide = 0.62 * widthMm;
      const atMm = yMm + LINE_MM - 3;
      const below = (text: string, leftMm: number) =>
        textLine(text, { xMm: leftMm, topMm: atMm + 1, face: 'regular', sizePt: 8 });
      const written = (text: string, leftMm: number) =>
        text === '' ? [] : [textLine(text, { xMm: leftMm, topMm: atMm - 5, face: 'bold', sizePt: 10 })];
      return [
        ...written(leftText, xMm),
        ...written(rightText, xMm + wide + 8),
        rule(xMm, atMm, xMm + wide, atMm),
        rule(xMm + wide + 8, atMm, xMm + widthMm, atMm),
        below(left, xMm),
        below(right, xMm + wide + 8),
      ];
    });
  // A long name is above the lines, where it has the whole width.
  const isShort = soldTo.length <= MOST_ON_LINE;
  if (!isShort) flow.text(say('report.buyer.sold-to-name', { name: soldTo }), 'bold');
  line(say('report.buyer.sold-to'), say('report.price'), isShort ? soldTo : '', priceText);
  line(say('report.buyer.signed'), say('report.buyer.signed-on'));
}
