import type { Passport } from '../contract/report.ts';
import { mcAxis, timeAxis } from '../drawing/chart/axes.ts';
import { chartOnPaper } from '../drawing/chart/on-paper.ts';
import { historyLayers } from '../history-chart/history-layers.ts';
import { historySummary } from '../history-chart/history-summary.ts';
import { readyWords } from '../history-chart/ready-words.ts';
import { spanOf } from '../history-chart/span.ts';
import { callMarks } from '../labels/call-mark.ts';
import { cautionsOfReady } from '../probing/calls/cautions.ts';
import { isDepthUnknown } from '../probing/readings/depth-read.ts';
import type { JudgedReading } from '../probing/readings/reading.ts';
import { toldDepths } from '../probing/readings/told-depths.ts';
import { depthWords } from '../record-words/depth-words.ts';
import { exclusionText } from '../record-words/exclusion-text.ts';
import { mcOrDash, shownText } from '../record-words/reading-texts.ts';
import { sampleRows } from '../record-words/sample-rows.ts';
import { spotWords } from '../record-words/spot-words.ts';
import { whereWords } from '../record-words/where-words.ts';
import { whyArchived } from '../record-words/why-archived.ts';
import type { Words } from '../words/words.ts';
import {
  averageCell,
  cell,
  checkCodePart,
  checkSquare,
  type Fact,
  foundFacts,
  notePart,
  QR_MM,
  short,
  sizeText,
} from './board-parts.ts';
import type { Flow } from './flow.ts';

/** Everything about a board: what it is, its call and why, its history with every reading, and where it has been. */
export function passport(content: Passport, flow: Flow, words: Words): void {
  const { say } = words;
  const startMm = flow.topMm;
  flow.beside((box) => checkSquare(content.checkCode, box), QR_MM);
  flow.narrow(QR_MM, () => {
    flow.text(say('report.title.passport'));
    flow.title(content.board.code);
    flow.gap(2);
    flow.facts(identity(content, words));
  });
  flow.downTo(startMm + QR_MM);
  notePart(content.board.note, flow, words);
  callPart(content, flow, words);
  chartPart(content, flow, words);
  roundsPart(content, flow, words);
  readingsPart(content, flow, words);
  movesPart(content, flow, words);
  ovenPart(content, flow, words);
  flow.notice([say('report.buyer.not-graded')]);
  checkCodePart(flow, content.checkCode, words);
}

function identity({ board }: Passport, words: Words): Fact[] {
  const { say, formats } = words;
  const { speciesName, sawnOn, driedBy, sawing, log, stackName } = board;
  const known: (readonly [string, string | null])[] = [
    [say('board.species'), formats.named(speciesName)],
    [say('report.size'), sizeText(board, words)],
    [say('board.stack'), stackName],
    [say('report.place'), whereWords(board, say)],
    [say('board.sawn-on'), sawnOn === null ? say('report.unknown') : formats.day(sawnOn, 'year')],
    [say('board.dried-by'), driedBy === 'air' ? null : say(`board.dried-by.${driedBy}`)],
    [say('board.sawing'), sawing === 'unknown' ? null : say(`board.sawing.${sawing}`)],
    [say('board.log'), log || null],
  ];
  return known.flatMap(([name, fact]) => (fact === null ? [] : [[name, fact] as const]));
}

function callPart({ board, endUse, judgement, forecast }: Passport, flow: Flow, words: Words): void {
  const { say, formats } = words;
  const { call, reasons } = judgement;
  flow.heading(say('report.call'));
  const found = board.latest;
  const left = board.archived;
  if (left !== null) {
    // Nothing is to be done with it any more.
    flow.text(say('archived.on', { why: whyArchived(left, say), leftOn: left.at }));
  } else {
    if (call === null) flow.call(say('report.no-call'), null);
    else flow.call(say(`call.${call}`), callMarks[call]);
    const why = reasons.length > 0 ? reasons : found === null ? [] : [found.reason];
    flow.text(why.length === 0 ? say('report.not-probed') : why.map((each) => say(each)).join(' '));
  }
  flow.gap(2);
  const here = forecast?.places[0];
  const ready = here ? readyWords(here, words) : null;
  flow.facts(
    [
      [say('report.use'), formats.named(endUse.name)],
      [say('report.target'), formats.mcRange(endUse)],
      ...(ready === null ? [] : [[say('report.ready-when'), ready] as const]),
      ...(found === null ? [] : foundFacts(found, words)),
    ],
    { columns: 3 },
  );
  // Whatever the call: the sheet outlives it.
  flow.notice(cautionsOfReady(endUse.cautions).map((each) => say(each)));
}

function chartPart({ board, endUse, findings, moves, forecast }: Passport, flow: Flow, words: Words): void {
  const { say } = words;
  if (findings.length === 0 && forecast === null) return;
  const history = {
    findings,
    stays: moves.map(({ since, placeName }) => ({ fromMs: Date.parse(since), placeName })),
    endUse,
    forecast,
  };
  const { fromMs, toMs } = spanOf(history, 0, true);
  const [first] = findings;
  // What is likely of the time before the first round reaches so high that nothing else could be read.
  const x = timeAxis(first ? Date.parse(first.at) : fromMs, toMs, words);
  const chart = chartOnPaper(
    {
      title: say('history.chart', { boardCode: board.code }),
      summary: historySummary(findings, endUse, null, words),
      x,
      y: mcAxis(say('chart.mc'), words),
      layers: historyLayers(history, 0, x.from, words),
    },
    flow.widthMm,
  );
  flow.heading(say('report.chart'), chart.heightMm);
  flow.drawing(chart.heightMm, ({ xMm, yMm }) => chart.at(xMm, yMm));
  flow.gap(1);
  flow.text(historySummary(findings, endUse, forecast && { details: forecast, index: 0 }, words));
}

function roundsPart({ findings }: Passport, flow: Flow, words: Words): void {
  const { say, formats } = words;
  if (findings.length === 0) return;
  flow.heading(say('report.rounds'));
  flow.table({
    columns: [
      { head: say('report.column.date'), share: 18 },
      { head: say('report.column.average'), share: 14, align: 'end' },
      { head: say('report.likely'), share: 18, align: 'end' },
      { head: say('report.shell'), share: 12, align: 'end' },
      { head: say('report.core'), share: 12, align: 'end' },
      { head: say('report.call'), share: 26 },
    ],
    rows: findings.toReversed().map((found) => {
      const { at, lowPct, highPct, call } = found;
      const { shellPct, corePct } = toldDepths(found);
      const likely =
        lowPct === null || highPct === null ? '–' : formats.mcInterval({ minPct: lowPct, maxPct: highPct });
      return [
        short(formats.day(at, 'year')),
        averageCell(found, words),
        short(likely),
        short(mcOrDash(shellPct, formats)),
        short(mcOrDash(corePct, formats)),
        call === null ? short(say('report.no-call')) : short(say(`call.${call}`), { mark: callMarks[call] }),
      ];
    }),
  });
}

function readingsPart({ board, readings, readBefore }: Passport, flow: Flow, words: Words): void {
  const { say, formats } = words;
  flow.heading(say('report.readings-of-board'));
  if (readings.length === 0) {
    flow.text(say('board.no-readings'));
    return;
  }
  flow.text(say('report.readings-how'));
  flow.gap(1.5);
  flow.table({
    columns: [
      { head: say('report.column.date'), share: 13 },
      { head: say('report.column.spot'), share: 31 },
      { head: say('report.column.raw'), share: 11, align: 'end' },
      { head: say('report.column.wood'), share: 9, align: 'end' },
      { head: say('report.column.mc'), share: 9, align: 'end' },
      { head: say('report.column.how'), share: 20 },
      { head: say('report.column.remark'), share: 24 },
    ],
    rows: readings.map((reading) => [
      short(formats.day(reading.takenAt, 'year')),
      {
        lines: [
          spotWords(reading, board, readings, readBefore, words),
          // Where both are unknown, the spot has said so.
          ...(isDepthUnknown(reading) ? [] : [depthWords(reading, board.thicknessMm, words)]),
        ],
      },
      short(shownText(reading, words)),
      short(reading.woodTempC === null ? '–' : formats.temperature(reading.woodTempC)),
      short(mcOrDash(reading.corrected.mcPct, formats), { face: reading.counts ? 'bold' : 'regular' }),
      cell(methodText(reading, words)),
      cell(remarkText(reading, words)),
    ]),
  });
}

/** What the raw value was corrected for, each once: "temperature, and species, by its curve". */
function methodText({ corrected: { mcPct, steps } }: JudgedReading, { say, formats }: Words): string {
  if (mcPct === null) return say('report.refused');
  const named = [...new Set(steps.map(({ step }) => say(`report.step.${step}`)))];
  return named.length === 0 ? say('report.not-corrected') : formats.list(named);
}

/** Why it is not used or what is questionable about it, and what the person wrote about it. */
function remarkText({ excluded, suspicions, counts, note }: JudgedReading, { say }: Words): string {
  const [worst] = suspicions.filter(({ severity }) => severity !== 'note');
  const remark =
    excluded !== null
      ? say('exclude.excluded', { reason: exclusionText(excluded, say) })
      : worst
        ? `${say(`severity.${worst.severity}`)} ${say(worst.why)}`
        : counts
          ? null
          : say('severity.refused');
  return [remark, note].filter(Boolean).join(' ');
}

function movesPart({ moves }: Passport, flow: Flow, { say }: Words): void {
  flow.heading(say('report.moves'), 8);
  for (const { since, placeName } of moves) flow.text(say('report.moved', { sinceOn: since, placeName }));
}

function ovenPart({ samples }: Passport, flow: Flow, words: Words): void {
  const { say, formats } = words;
  const rows = sampleRows(samples, words);
  flow.heading(say('report.oven'), rows.length === 0 ? 8 : 20);
  if (rows.length === 0) {
    flow.text(say('report.oven-none'));
    return;
  }
  flow.table({
    columns: [
      { head: say('report.column.date'), share: 18 },
      { head: say('report.column.what'), share: 20 },
      { head: say('report.column.weight'), share: 34 },
      { head: say('report.column.mc'), share: 18, align: 'end' },
      { head: say('report.column.remark'), share: 24 },
    ],
    rows: rows.map(({ at, what, weight, mc, excluded }) => [
      short(formats.day(at, 'year')),
      cell(what),
      cell(weight),
      short(mc ?? '–', { face: 'bold' }),
      cell(excluded === null ? '' : say('exclude.excluded', { reason: exclusionText(excluded, say) })),
    ]),
  });
  flow.gap(1);
  flow.text(say(samples.status));
}
