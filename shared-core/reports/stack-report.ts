import type { BoardOfStack, StackReport } from '../contract/report.ts';
import { fittedText } from '../drawing/fitted-text.ts';
import type { Operation } from '../drawing/page.ts';
import { callMarks } from '../labels/call-mark.ts';
import { callSchema } from '../probing/calls/assessment.ts';
import { cautionsOfReady } from '../probing/calls/cautions.ts';
import { ONE_IN } from '../probing/plan/stack-call.ts';
import { mcOrDash } from '../record-words/reading-texts.ts';
import { missingInTally, type TallyAmounts } from '../tally/tally.ts';
import type { Words } from '../words/words.ts';
import { averageCell, cell, notePart, short, sizeText } from './board-parts.ts';
import { type Cell, type Flow, frame, markOperation, textLine } from './flow.ts';

/** A stack: its call and why, how many boards were probed, what it amounts to, how it lies, and all boards. */
export function stackReport(content: StackReport, flow: Flow, words: Words): void {
  const { say, formats } = words;
  const { stack, endUse, boards } = content;
  flow.text(say('report.title.stack'));
  flow.title(stack.name);
  flow.gap(2);
  flow.facts(
    [
      [say('board.species'), formats.list(stack.speciesNames.map(formats.named))],
      [say('report.place'), stack.placeName],
      [say('report.use'), formats.named(endUse.name)],
      [say('report.target'), formats.mcRange(endUse)],
      [
        say('report.boards'),
        say('report.probed', {
          probed: stack.probed,
          boards: stack.boards,
          halfProbed: stack.halfProbed,
        }),
      ],
      [
        say('report.read-on'),
        stack.lastProbedAt === null ? say('report.not-probed') : formats.day(stack.lastProbedAt, 'year'),
      ],
    ],
    { columns: 3 },
  );
  elsewherePart(content, flow, words);
  notePart(stack.note, flow, words);
  callPart(content, flow, words);
  samplingPart(content, flow, words);
  tallyPart(content, flow, words);
  drawingPart(boards, flow, words);
  boardsPart(content, flow, words);
  flow.notice([say('report.buyer.not-graded')]);
}

/** Boards of it that nothing else of the report has. */
function elsewherePart({ stack, elsewhere }: StackReport, flow: Flow, { say, formats }: Words): void {
  if (elsewhere.length === 0) return;
  const { boards } = stack.elsewhere;
  const named = elsewhere.map(({ code: boardCode, placeName }) =>
    say('report.board-at', { boardCode, placeName }),
  );
  const boardTexts = formats.list(boards > named.length ? [...named, '…'] : named);
  flow.text(say('report.elsewhere', { boards, boardTexts }));
}

function callPart({ stack: { call: called, due }, endUse }: StackReport, flow: Flow, { say }: Words): void {
  flow.heading(say('report.call'));
  if (called === null) flow.call(say('report.no-call'), null);
  else {
    const [what, ...why] = called.reasons.map((each) => say(each));
    flow.call(what!, called.call === null ? null : callMarks[called.call]);
    flow.text([...(due ? [say(due.why)] : []), ...why].join(' '));
  }
  flow.notice(cautionsOfReady(endUse.cautions).map((each) => say(each)));
}

function samplingPart({ plan }: StackReport, flow: Flow, { say }: Words): void {
  if (plan === null) return;
  const { allProbed, toKnowReady, boards: all, probed, certainty } = plan;
  flow.heading(say('report.sampling'), 10);
  if (allProbed) {
    flow.text(say(allProbed));
    return;
  }
  flow.text(say('report.sampling-probe', { boards: toKnowReady, all }));
  if (toKnowReady < all)
    flow.text(say('stack-plan.if-all-ready', { certaintyPct: 100 * certainty, oneIn: ONE_IN }));
  flow.text(say('report.sampling-done', { probed }));
}

function tallyPart({ tally: { rows, total } }: StackReport, flow: Flow, words: Words): void {
  const { say, formats } = words;
  if (total.boards === 0) return;
  flow.heading(say('report.tally'));
  const inUnit = (headText: string, unitText: string) => say('unit.head-in', { headText, unitText });
  const amounts = (of: TallyAmounts, face: Cell['face'] = 'regular'): Cell[] => [
    short(formats.number(of.boards), { face }),
    short(of.measured === 0 ? '–' : formats.number(of.boardFeet), { face }),
    ...(formats.isMetric
      ? [short(of.measured === 0 ? '–' : formats.cubicMeters(of.cubicMeters), { face })]
      : []),
    short(of.weighed === 0 ? '–' : formats.weightNumber(of.nowKg), { face }),
    short(of.weighed === 0 ? '–' : formats.weightNumber(of.targetKg), { face }),
  ];
  flow.table({
    columns: [
      { head: say('tally.by.species'), share: 26 },
      { head: say('tally.by.thickness'), share: 14 },
      { head: say('tally.boards'), share: 10, align: 'end' },
      { head: say('unit.board-feet-name'), share: 18, align: 'end' },
      ...(formats.isMetric
        ? [{ head: inUnit(say('tally.volume'), 'm³'), share: 18, align: 'end' as const }]
        : []),
      { head: inUnit(say('tally.weight-now'), formats.weightUnit), share: 14, align: 'end' },
      { head: inUnit(say('tally.weight-then'), formats.weightUnit), share: 14, align: 'end' },
    ],
    rows: [
      ...rows.map((row) => [
        cell(formats.named(row.speciesName ?? '')),
        cell(row.thickness ? formats.thickness(row.thickness) : ''),
        ...amounts(row),
      ]),
      [cell(say('report.total'), { face: 'bold' }), cell(''), ...amounts(total, 'bold')],
    ],
  });
  flow.gap(1);
  flow.text(`${say('tally.board-feet-how')} ${say('tally.weight-how')}`, 'regular', 8);
  if (formats.isMetric) flow.text(say('tally.how-metric'), 'regular', 8);
  for (const why of missingInTally(total)) flow.text(say(why), 'regular', 8);
}

const BOX_HEIGHT_MM = 9;
const BOX_GAP_MM = 1.2;
/** Left of a layer, for its number. */
const LAYER_MM = 9;
/** A box that is narrower has room for the call alone. */
const LEAST_FOR_CODE_MM = 18;
const WIDEST_BOX_MM = 40;
const BOX_PT = 8;

/** How it lies: a row of boxes for each layer, the top one first. */
function drawingPart(boards: readonly BoardOfStack[], flow: Flow, words: Words): void {
  const { say, formats } = words;
  const placed = boards.filter(({ layer, column }) => layer !== null && column !== null);
  if (placed.length === 0) return;
  const columns = Math.max(...placed.map(({ column }) => column!));
  const byLayer = new Map<number, BoardOfStack[]>();
  for (const board of placed) byLayer.set(board.layer!, [...(byLayer.get(board.layer!) ?? []), board]);
  const layers = [...byLayer.keys()].sort((a, b) => b - a);
  const pitchMm = Math.min(WIDEST_BOX_MM, (flow.widthMm - LAYER_MM) / columns);
  const gapMm = Math.min(BOX_GAP_MM, pitchMm / 5);
  flow.heading(say('report.drawing'), 2 * BOX_HEIGHT_MM + 15);
  flow.text(
    say(pitchMm - gapMm < LEAST_FOR_CODE_MM ? 'report.drawing-calls' : 'report.drawing-codes'),
    'regular',
    BOX_PT,
  );
  flow.legend(
    callSchema.options
      .filter((call) => placed.some((board) => board.call === call))
      .map((call) => ({ mark: callMarks[call], text: say(`call.${call}`) })),
  );
  flow.gap(1.5);
  for (const layer of layers) {
    flow.drawing(BOX_HEIGHT_MM + BOX_GAP_MM, ({ xMm, yMm }) => [
      textLine(formats.number(layer), { xMm, topMm: yMm + 2.5, face: 'bold', sizePt: BOX_PT }),
      ...byLayer.get(layer)!.flatMap((board, _, all) => {
        // Boards that were entered at one place share its box.
        const there = all.filter(({ column }) => column === board.column);
        const widthMm = (pitchMm - gapMm) / there.length;
        const left = xMm + LAYER_MM + (board.column! - 1) * pitchMm + there.indexOf(board) * widthMm;
        return boardBox(board, left, yMm, widthMm);
      }),
    ]);
  }
}

function boardBox({ code, call }: BoardOfStack, xMm: number, yMm: number, widthMm: number): Operation[] {
  const box = frame({ xMm, yMm, widthMm, heightMm: BOX_HEIGHT_MM });
  const markMm = call === null ? 0 : 4;
  const isNarrow = widthMm < LEAST_FOR_CODE_MM;
  const mark =
    call === null
      ? []
      : [
          markOperation(
            callMarks[call],
            isNarrow ? xMm + widthMm / 2 - 1 : xMm + 1,
            yMm + 2.6,
            Math.min(BOX_PT, widthMm * 2),
          ),
        ];
  if (isNarrow) return [box, ...mark];
  const text = fittedText(code, 'bold', widthMm - 2 - markMm, BOX_PT, BOX_PT, 'middle');
  return [
    box,
    ...mark,
    { kind: 'text', ...text, xMm: xMm + 1 + markMm, baselineMm: yMm + 5.5, face: 'bold' },
  ];
}

function boardsPart({ stack, boards }: StackReport, flow: Flow, words: Words): void {
  const { say, formats } = words;
  if (boards.length === 0) return;
  flow.heading(say('report.all-boards'));
  if (boards.length < stack.boards)
    flow.text(say('report.first-boards', { first: boards.length, boards: stack.boards }));
  flow.table({
    columns: [
      { head: say('report.column.board'), share: 15 },
      { head: say('board.species'), share: 20 },
      { head: say('report.size'), share: 36 },
      { head: say('report.column.layer'), share: 8 },
      { head: say('report.column.date'), share: 14 },
      { head: say('report.column.average'), share: 10, align: 'end' },
      { head: say('report.column.shell-core'), share: 16, align: 'end' },
      { head: say('report.call'), share: 16 },
    ],
    rows: boards.map((board) => {
      const { code, speciesName, layer, column, latest, call } = board;
      return [
        cell(code, { face: 'bold' }),
        cell(formats.named(speciesName)),
        cell(sizeText(board, words)),
        cell(
          layer === null
            ? '–'
            : column === null
              ? formats.number(layer)
              : say('report.layer-column', { layer, column }),
        ),
        short(latest === null ? '–' : formats.day(latest.at, 'year')),
        averageCell(latest, words),
        short(
          latest === null
            ? '–'
            : latest.isDepthUnknown
              ? say('report.depth-unknown')
              : `${mcOrDash(latest.shellPct, formats)} · ${mcOrDash(latest.corePct, formats)}`,
        ),
        call === null ? short(say('report.no-call')) : short(say(`call.${call}`), { mark: callMarks[call] }),
      ];
    }),
  });
}
