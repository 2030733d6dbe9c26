/** Paper and files state the same call, MC and day of a board as its page and the lists. */
import { expect, test } from 'vitest';
import type { ReportContent, ReportKind } from '../../../shared-core/contract/report.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { rowsOf } from '../exchange/a-csv.ts';
import { downloaded } from '../exchange/downloaded.ts';
import { pastPage } from './past-page.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

// Real threads on a busy computer.
withYardOfTwo();

const region = { locale: 'en-US', timeZone: 'America/Chicago' };

interface Stated {
  call: string | null;
  averagePct: number | null;
  at: string | null;
}
type Found = { averagePct: number | null; at: string } | null;
const stated = (call: string | null, found: Found): Stated => ({
  call,
  averagePct: found?.averagePct ?? null,
  at: found?.at ?? null,
});

/** Boards in each state in which what is known today is not just what a round of today read. */
async function boardsInAllStates(): Promise<Map<string, number>> {
  const codes = ['OLD-WET', 'OLD-DRY', 'HALF', 'MOVED', 'CAME', 'PAGE', 'ABOVE', 'NEVER'];
  const boards = await yard.command('boards.add', codes.map(yard.board));
  const id = new Map(boards.map((board, index) => [codes[index]!, board.id]));
  const page = (day: string, lines: { code: string; raws: number[]; above?: number[] }[]) =>
    yard.command(
      'pastRounds.save',
      pastPage({
        startedAt: `${day}T12:00:00.000Z`,
        depths: ['unknown', 'unknown', 'unknown', 'unknown'],
        lines: lines.map(({ code, ...line }) => ({ boardId: id.get(code)!, ...line })),
        isDateRight: true,
        thereSince: '2025-10-01',
      }),
    );
  await page('2025-12-01', [
    { code: 'OLD-WET', raws: [28, 28.4, 27.6, 28] },
    { code: 'OLD-DRY', raws: [7.4, 7.6, 7.5, 7.7] },
  ]);
  await page('2026-05-30', [
    { code: 'PAGE', raws: [15, 15.2, 15.4, 15.2] },
    { code: 'ABOVE', raws: [28, 28, 28, 28], above: [0, 1, 2, 3] },
  ]);
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  const probe = async (code: string, raws: number[]) => {
    for (const [spotIndex, raw] of raws.entries())
      await yard.command('rounds.saveTyped', {
        roundId,
        boardId: id.get(code)!,
        spotIndex,
        newestReadingId: null,
        raw,
      });
  };
  await probe('HALF', [8]);
  await probe('MOVED', [14.6, 15, 14.8, 19]);
  await probe('CAME', [19.2, 19.4, 19.1]);
  await yard.command('rounds.finish', { roundId });
  yard.later(DAY_MS);
  const { readings } = await yard.query('boards.get', { id: id.get('MOVED')! });
  await yard.command('readings.moveToBoard', {
    readingId: readings.find(({ raw }) => raw === 19)!.id,
    boardId: id.get('CAME')!,
    spotIndex: null,
    scope: 'reading',
  });
  return id;
}

async function csv(kind: 'boards' | 'calls'): Promise<Record<string, string>[]> {
  const offered = await yard.command('exchange.beginExport', { kind, region, work: null });
  return rowsOf((await downloaded(yard, offered)).toString('utf8'));
}
/** To a tenth of a percent, as it is shown. */
const ofRow = (row: Record<string, string> | undefined) => ({
  call: row?.Call || null,
  averagePct: row?.['Average MC (%)'] ? Number(Number(row['Average MC (%)']).toFixed(1)) : null,
});

async function report<K extends ReportKind>(kind: K, id: number, more: number[] = []) {
  const content: ReportContent = await yard.query('reports.content', { kind, id, more });
  return content as Extract<ReportContent, { kind: K }>;
}

test('page, lists, labels, sheets and files state the same of a board', async () => {
  const id = await boardsInAllStates();
  await outlooksMade();
  const ids = [...id.values()];
  const list = { stackId: yard.stack.id, search: '', offset: 0, limit: 50 };
  const { rows } = await yard.query('boards.list', list);
  const labels = (await yard.query('labels.contents', { boardIds: ids })).filter((each) => each !== null);
  const toLabel = await yard.query('labels.boards', list);
  const onStack = (await report('stack', yard.stack.id)).boards;
  const ofStack = (await report('buyer-list', yard.stack.id)).boards;
  const chosen = await yard.query('reports.content', { kind: 'buyer', id: ids[0]!, more: ids.slice(1) });
  if (chosen.kind !== 'buyer-list') throw new Error('Another report came.');
  const [boardsCsv, callsCsv] = [await csv('boards'), await csv('calls')];
  const calls = new Set<string | null>();
  for (const [code, boardId] of id) {
    const { board, findings } = await yard.query('boards.get', { id: boardId });
    const { judgement } = await yard.query('boards.forecast', { id: boardId });
    const onPage = stated(judgement.call, board.latest);
    calls.add(onPage.call);
    const is = <T extends { code: string }>(all: readonly T[]): T => all.find((each) => each.code === code)!;
    const both = (call: Stated['call'], found: (Found & { call: Stated['call'] }) | null) => [
      stated(call, found),
      stated(found?.call ?? null, found),
    ];
    const passport = await report('passport', boardId);
    const sheet = await report('buyer', boardId);
    const row = is(rows);
    const newest = (found: typeof findings) => found.find(({ roundId }) => roundId === board.latest?.roundId);
    const check = await yard.query('reports.check', { checkCode: is(ofStack).checkCode });
    const label = is(labels).latest;
    expect({
      code,
      list: both(row.judgement.call, row.latest),
      page: stated(newest(findings)?.call ?? null, newest(findings) ?? null),
      label: stated(label?.call ?? null, label),
      toLabel: is(toLabel.boards).call,
      passport: both(passport.judgement.call, passport.board.latest),
      rounds: stated(newest(passport.findings)?.call ?? null, newest(passport.findings) ?? null),
      sheet: both(sheet.judgement.call, sheet.board.latest),
      chosen: both(is(chosen.boards).call, is(chosen.boards).latest),
      ofStack: both(is(ofStack).call, is(ofStack).latest),
      onStack: both(is(onStack).call, is(onStack).latest),
      check: [check.matches, check.stated && stated(check.stated.call, check.stated)],
    }).toEqual({
      code,
      list: [onPage, onPage],
      page: onPage,
      label: onPage,
      toLabel: onPage.call,
      passport: [onPage, onPage],
      rounds: onPage,
      sheet: [onPage, onPage],
      chosen: [onPage, onPage],
      ofStack: [onPage, onPage],
      onStack: [onPage, onPage],
      check: [true, board.latest && onPage],
    });
    const inCsv = {
      call: onPage.call,
      averagePct: onPage.averagePct === null ? null : Number(onPage.averagePct.toFixed(1)),
    };
    const inBoards = boardsCsv.find(({ Board }) => Board === code);
    expect({ code, ...ofRow(inBoards) }).toEqual({ code, ...inCsv });
    if (board.latest === null) continue;
    const ofLatest = callsCsv.find(
      (each) => each.Board === code && each['Probed at'] === inBoards!['Probed at'],
    );
    expect({ code, ...ofRow(ofLatest) }).toEqual({ code, ...inCsv });
  }
  // Else the states above would be no different ones.
  expect(calls).toEqual(new Set(['keep-drying', 'probe-again', null]));
});
