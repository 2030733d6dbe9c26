import type { BuyerSheet } from '../contract/report.ts';
import { callMarks } from '../labels/call-mark.ts';
import type { Call } from '../probing/calls/assessment.ts';
import { boardFeetIfMeasured } from '../wood/movement/volume.ts';
import type { Words } from '../words/words.ts';
import { checkCodePart, checkSquare, depthFacts, type Fact, QR_MM, sizeText } from './board-parts.ts';
import type { Flow } from './flow.ts';
import { limitsPart, probedWhen, signaturePart, statedMc } from './for-buyer.ts';

/** Calls that say how dry it is, whoever has it; the others tell its owner what to do. */
const callsOfWood: ReadonlySet<Call> = new Set(['ready', 'too-dry']);
/** Read off a table by two people. */
const FIGURE_PT = 32;

/** The little that someone who buys a board needs, and plainly what the sheet is and is not. */
export function buyerSheet(content: BuyerSheet, flow: Flow, words: Words): void {
  const { say, formats } = words;
  const { board, endUse, judgement, readings, checkCode, yardName, printedAt } = content;
  const startMm = flow.topMm;
  flow.beside((box) => checkSquare(checkCode, box), QR_MM);
  flow.narrow(QR_MM, () => {
    if (yardName !== '') flow.text(yardName, 'bold', 12);
    flow.text(say('report.title.buyer'));
    flow.title(board.code);
    flow.gap(2);
    const boardFeet = boardFeetIfMeasured(board);
    flow.facts([
      [say('board.species'), formats.named(board.speciesName)],
      [say('report.size'), sizeText(board, words)],
      [say('unit.board-feet-name'), boardFeet === null ? '–' : formats.number(boardFeet)],
    ]);
  });
  flow.downTo(startMm + QR_MM);
  const found = board.latest;
  flow.notice([say(found === null ? 'report.buyer.not-read' : 'report.buyer.not-graded')]);

  flow.heading(say('report.buyer.mc'));
  const mc = statedMc(found, words);
  flow.call(mc.figure, null, found === null ? 16 : FIGURE_PT);
  if (mc.known !== '') flow.text(mc.known, 'bold', 11);
  if (found !== null) flow.text(probedWhen(found.at, printedAt, words), 'regular', 11);
  flow.gap(3);
  if (found !== null) {
    const { call, reasons } = judgement;
    if (call !== null && callsOfWood.has(call)) {
      flow.call(say(`call.${call}`), callMarks[call]);
      const [reason] = reasons;
      if (reason !== undefined) flow.text(say(reason));
    } else if (call === 'bring-in' || call === 'keep-drying') {
      flow.call(say('report.buyer.not-at-target'), null);
    }
    flow.gap(2);
  }
  const ofRound =
    found === null ? 0 : readings.filter(({ roundId, counts }) => counts && roundId === found.roundId).length;
  const figures: Fact[] =
    found === null ? [] : [...depthFacts(found, words), [say('report.readings'), formats.number(ofRound)]];
  flow.facts(
    [
      [say('report.use'), formats.named(endUse.name)],
      [say('report.target'), formats.mcRange(endUse)],
      ...figures,
    ],
    { columns: 2 },
  );
  limitsPart(found !== null, endUse.cautions, flow, words);
  checkCodePart(flow, checkCode, words);
  signaturePart(content, flow, words);
}
