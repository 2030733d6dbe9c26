import type { BuyerList } from '../contract/report.ts';
import { boardFeetIfMeasured } from '../wood/movement/volume.ts';
import type { Words } from '../words/words.ts';
import { cell, checkSquare, short, sizeText } from './board-parts.ts';
import { reportName } from './draw-report.ts';
import { type Cell, type Flow, onOneLine } from './flow.ts';
import { limitsPart, signaturePart, statedMc } from './for-buyer.ts';

const TABLE_PT = 9.5;
/** With its white: modules of 0.38 mm for the longest ID, which a phone reads (`smallestModuleMm`). */
const QR_IN_ROW_MM = 14;
/** Of what a buyer looks for. */
const FIGURE_PT = 13;

/** Several boards for someone who buys them: a row each, what they amount to, and what the sheet is and is not. */
export function buyerList(content: BuyerList, flow: Flow, words: Words): void {
  const { say, formats } = words;
  const { boards, stack, yardName, printedAt } = content;
  const isAnyProbed = boards.some(({ latest }) => latest !== null);
  if (yardName !== '') flow.text(yardName, 'bold', 12);
  flow.text(say('report.title.buyer-list'));
  flow.title(reportName(content, words));
  flow.gap(1);
  flow.text(say('report.buyer.printed', { printedOn: printedAt }));
  flow.notice([say(isAnyProbed ? 'report.buyer.not-graded' : 'report.buyer.not-read')]);
  if (stack !== null && boards.length < stack.boards)
    flow.text(say('report.first-boards', { first: boards.length, boards: stack.boards }));
  const feet = boards.map(boardFeetIfMeasured);
  const measured = feet.filter((each) => each !== null);
  const feetCell = (boardFeet: number | null, face: Cell['face'] = 'regular') =>
    short(boardFeet === null ? '–' : formats.number(boardFeet), { face });
  flow.table({
    sizePt: TABLE_PT,
    columns: [
      { head: say('report.column.board'), share: 34 },
      { head: say('board.species'), share: 22 },
      { head: say('report.size'), share: 50 },
      { head: say('unit.board-feet-name'), share: 14, align: 'end' },
      { head: say('report.buyer.mc'), share: 30 },
      { head: say('report.read-on'), share: 25 },
      { head: say('report.check-code'), share: 12 },
    ],
    rows: [
      ...boards.map((board, index) => {
        const { code, checkCode, speciesName, latest } = board;
        const mc = statedMc(latest, words);
        const codeText = onOneLine(checkCode.replace(/^.*\//, ''));
        return [
          cell(code, { face: 'bold', below: [codeText] }),
          cell(formats.named(speciesName)),
          cell(sizeText(board, words)),
          feetCell(feet[index]!),
          cell(mc.figure, {
            face: 'bold',
            sizePt: latest === null ? TABLE_PT : FIGURE_PT,
            below: mc.known === '' ? [] : [mc.known],
          }),
          latest === null
            ? short('–')
            : cell(onOneLine(formats.day(latest.at, 'year')), {
                below: [formats.ago(latest.at, printedAt)],
              }),
          cell('', { square: { sideMm: QR_IN_ROW_MM, draw: (box) => checkSquare(checkCode, box) } }),
        ];
      }),
      [
        cell(say('report.total'), { face: 'bold' }),
        cell(say('report.boards-of', { boards: boards.length }), { face: 'bold' }),
        cell(''),
        feetCell(measured.length === 0 ? null : measured.reduce((sum, each) => sum + each, 0), 'bold'),
        cell(''),
        cell(''),
        cell(''),
      ],
    ],
  });
  flow.gap(1);
  const unmeasured = boards.length - measured.length;
  if (unmeasured > 0) flow.text(say('report.buyer.unmeasured', { boards: unmeasured }), 'regular', 8);
  if (measured.length > 0) flow.text(say('tally.board-feet-how'), 'regular', 8);
  limitsPart(isAnyProbed, content.cautions, flow, words);
  flow.text(say('report.check-how-each', { example: boards[0]?.checkCode ?? '' }), 'regular', 8);
  signaturePart(content, flow, words);
}
