import type { BuyerSheet } from '../contract/report.ts';
import { callMarks } from '../labels/call-mark.ts';
import type { Call } from '../probing/calls/assessment.ts';
import { cautionsOfReady } from '../probing/calls/cautions.ts';
import { LEAST_METER_PCT } from '../wood/moisture/correction-uncertainty.ts';
import { FIBER_SATURATION_PCT } from '../wood/moisture/fiber-saturation.ts';
import type { Words } from '../words/words.ts';
import { checkCodePart, checkSquare, foundFacts, QR_MM, sizeText } from './board-parts.ts';
import { type Flow, rule, textLine } from './flow.ts';

/** Calls that tell what to do in the yard. */
const yardCalls: ReadonlySet<Call> = new Set(['bring-in', 'keep-drying']);

/** The little that someone who buys a board needs, and plainly what the sheet is and is not. */
export function buyerSheet(content: BuyerSheet, flow: Flow, words: Words): void {
  const { say, formats } = words;
  const { board, endUse, judgement, readings, checkCode } = content;
  const startMm = flow.topMm;
  flow.beside((box) => checkSquare(checkCode, box), QR_MM);
  flow.narrow(QR_MM, () => {
    flow.text(say('report.title.buyer'));
    flow.title(board.code);
    flow.gap(2);
    flow.facts([
      [say('board.species'), board.speciesName],
      [say('report.size'), sizeText(board, words)],
    ]);
  });
  flow.downTo(startMm + QR_MM);
  flow.notice([say('report.buyer.not-graded')]);

  flow.heading(say('report.call'));
  const { call, reasons } = judgement;
  // What the owner is to do with it next is of no use to a buyer; the figures below say how dry it is.
  if (call !== null && yardCalls.has(call)) flow.call(say('report.buyer.not-at-target'), null);
  else {
    if (call === null) flow.call(say('report.no-call'), null);
    else flow.call(say(`call.${call}`), callMarks[call]);
    const [reason] = reasons;
    flow.text(reason === undefined ? say('report.not-probed') : say(reason));
  }
  flow.gap(3);
  const found = board.latest;
  const ofRound =
    found === null ? 0 : readings.filter(({ roundId, counts }) => counts && roundId === found.roundId).length;
  flow.facts(
    [
      [say('report.use'), endUse.name],
      [say('report.target'), formats.mcRange(endUse)],
      ...(found === null
        ? []
        : [...foundFacts(found, words), [say('report.readings'), formats.number(ofRound)] as const]),
    ],
    { columns: 2 },
  );
  flow.gap(2);
  for (const sentence of [
    say('report.buyer.day'),
    say('report.buyer.changes'),
    say('report.buyer.accuracy', { leastLimitPct: LEAST_METER_PCT, mostLimitPct: FIBER_SATURATION_PCT }),
  ])
    flow.text(sentence);
  // Whoever buys it may use it for something else than it was dried for.
  const cautions = cautionsOfReady(endUse.cautions.filter((each) => each !== 'structural'));
  flow.notice([say('report.buyer.strength'), ...cautions.map((each) => say(each))]);
  checkCodePart(flow, checkCode, words);
  flow.gap(16);
  signature(flow, words);
}

function signature(flow: Flow, { say }: Words): void {
  flow.drawing(8, ({ xMm, yMm, widthMm }) => {
    const wide = 0.62 * widthMm;
    const below = (text: string, at: number) =>
      textLine(text, { xMm: at, topMm: yMm + 1, face: 'regular', sizePt: 8 });
    return [
      rule(xMm, yMm, xMm + wide, yMm),
      rule(xMm + wide + 8, yMm, xMm + widthMm, yMm),
      below(say('report.buyer.signed'), xMm),
      below(say('report.buyer.signed-on'), xMm + wide + 8),
    ];
  });
}
