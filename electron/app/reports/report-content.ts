import { setImmediate } from 'node:timers/promises';
import { nameKey } from '../../../shared-core/contract/import.ts';
import {
  type BoardOfStack,
  type BoardReportKind,
  type BuyerList,
  type BuyerSheet,
  MOST_REPORTED,
  type Passport,
  type Report,
  type ReportContent,
  type StackList,
  type StackReport,
} from '../../../shared-core/contract/report.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { CERTAINTY } from '../../../shared-core/probing/plan/stack-call.ts';
import { planStack } from '../../../shared-core/probing/plan/stack-plan.ts';
import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import { basisNow, usualCoreWay } from '../../../shared-core/probing/readings/plan-basis.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import { standingOf } from '../forecast/stack-plans.ts';
import type { Queries } from '../handlers.ts';
import { sampleBoardState } from '../judging/sample-boards.ts';
import { tallyOf } from '../stock/stack-volume.ts';
import { settingsOf } from '../yard/settings.ts';
import { codeOfSheet } from './check-sheet.ts';

/** What is typed for a sheet for a buyer. */
type Sale = Pick<Report, 'soldTo' | 'priceText'>;

/** The queries that a report is made of. */
export type AskedForReports = Pick<Queries, 'boards.get' | 'boards.forecast' | 'stacks.get' | 'stacks.plan'>;

/** So many boards are read from the file at a time, some milliseconds, and then others have their turn. */
const READ_AT_A_TIME = 100;

/** Everything that a report states, as it is in the yard now. */
export function createReportContent(context: QueryContext, ask: AskedForReports, pins: () => Pins | null) {
  const endUseOfStack = (stackId: number): EndUse => {
    const { endUses, stacks } = context.yard();
    return orRefuse(endUses.get(orRefuse(stacks.endUseId(stackId), 'stack')), 'use');
  };

  const forBuyer = ({ soldTo, priceText }: Sale, boards: readonly Pick<BoardRow, 'archived'>[]) => ({
    yardName: settingsOf(context.yard()).nameOnPaper,
    soldTo: soldTo === '' ? soldToOf(boards) : soldTo,
    priceText,
  });

  async function ofBoard(kind: BoardReportKind, id: number, sale: Sale): Promise<Passport | BuyerSheet> {
    const { details, judgement } = await ask['boards.forecast']({ id }, '');
    const { board, moves, readings, findings, readBefore } = await ask['boards.get']({ id }, '');
    const endUse = endUseOfStack(board.stackId);
    const printedAt = context.now();
    // The call of the list may be of an earlier forecast.
    const latest = board.latest && { ...board.latest, call: judgement.call };
    const shown = { printedAt, board: { ...board, latest }, endUse, judgement, readings };
    const samples = sampleBoardState(context.yard(), id);
    const checkCode = codeOfSheet({ kind, ...shown, moves, samples }, printedAt);
    if (kind === 'buyer') return { kind, ...shown, checkCode, ...forBuyer(sale, [board]) };
    // Its newest round has the call of today in the list of rounds as well.
    const rounds = findings.map((found) =>
      found.roundId === latest?.roundId ? { ...found, call: latest.call } : found,
    );
    return { kind, ...shown, checkCode, findings: rounds, moves, forecast: details, samples, readBefore };
  }

  /** The boards that are with a stack, in the order in which they were entered. */
  async function boardsOf(stackId: number): Promise<BoardRow[]> {
    const boards: BoardRow[] = [];
    for (;;) {
      const limit = Math.min(READ_AT_A_TIME, MOST_REPORTED - boards.length);
      const { rows } = context.yard().boards.page({ stackId, search: '', offset: boards.length, limit });
      boards.push(...rows);
      if (rows.length < READ_AT_A_TIME || boards.length >= MOST_REPORTED) return boards;
      await setImmediate();
    }
  }

  /** From the boards at hand, if they are all: to read them again would keep others waiting. */
  async function planOf(stackId: number, rows: readonly BoardRow[], boards: number) {
    if (rows.length < boards) return ask['stacks.plan']({ id: stackId, certainty: CERTAINTY }, '');
    return rows.length === 0 ? null : planStack(rows.map(standingOf), endUseOfStack(stackId), CERTAINTY);
  }

  /** The boards that a person chose, in that order. */
  async function chosenBoards(ids: readonly number[]): Promise<BoardRow[]> {
    const boards: BoardRow[] = [];
    for (const [index, id] of ids.entries()) {
      if (index > 0 && index % READ_AT_A_TIME === 0) await setImmediate();
      boards.push(orRefuse(context.yard().boards.get(id), 'board'));
    }
    return boards;
  }

  function listForBuyer(rows: readonly BoardRow[], sale: Sale, stack: BuyerList['stack']): BuyerList {
    const printedAt = context.now();
    const uses = new Map<number, EndUse>();
    const boards = rows.map((row) => {
      const endUse = uses.get(row.stackId) ?? endUseOfStack(row.stackId);
      uses.set(row.stackId, endUse);
      const latest = row.latest && { ...row.latest, call: row.judgement.call };
      const board = { ...row, latest };
      return { ...boardOfStack(board), checkCode: codeOfSheet({ kind: 'buyer', board, endUse }, printedAt) };
    });
    return {
      kind: 'buyer-list',
      printedAt,
      ...forBuyer(sale, rows),
      stack,
      cautions: [...new Set([...uses.values()].flatMap(({ cautions }) => cautions))],
      boards,
    };
  }

  async function stackForBuyer(stackId: number, sale: Sale): Promise<BuyerList> {
    const { name, boards } = await ask['stacks.get']({ id: stackId }, '');
    return listForBuyer(await boardsOf(stackId), sale, { name, boards });
  }

  async function ofStack(stackId: number): Promise<StackReport> {
    const stack = await ask['stacks.get']({ id: stackId }, '');
    const rows = await boardsOf(stackId);
    const moved = { stackId, search: '', filter: 'elsewhere', offset: 0, limit: READ_AT_A_TIME } as const;
    return {
      kind: 'stack',
      printedAt: context.now(),
      stack,
      endUse: endUseOfStack(stackId),
      boards: rows.map(boardOfStack),
      elsewhere: context
        .yard()
        .boards.page(moved)
        .rows.map(({ code, placeName }) => ({ code, placeName })),
      plan: await planOf(stackId, rows, stack.boards),
      tally: await tallyOf(context, stackId, ['species', 'thickness']),
    };
  }

  async function listOf(stackId: number): Promise<StackList> {
    const stack = await ask['stacks.get']({ id: stackId }, '');
    const coreWay = usualCoreWay(endUseOfStack(stackId));
    const inUse = pins();
    const rows = await boardsOf(stackId);
    return {
      kind: 'list',
      printedAt: context.now(),
      stack,
      boards: rows.map((row) => {
        const planBasis = basisNow({ thicknessMm: row.thicknessMm, isRead: false }, null, coreWay, inUse);
        const { plan } = planSpots({ lengthMm: row.lengthMm, thicknessMm: row.thicknessMm, planBasis });
        const spots = plan.map(({ spot: { depth, depthMm }, along }) => ({ depth, depthMm, along }));
        return { ...boardOfStack(row), spots };
      }),
    };
  }

  return async ({ kind, id, more, ...sale }: Report): Promise<ReportContent> => {
    switch (kind) {
      case 'passport':
        return ofBoard(kind, id, sale);
      case 'buyer': {
        const ids = [...new Set([id, ...more])];
        return ids.length === 1 ? ofBoard(kind, id, sale) : listForBuyer(await chosenBoards(ids), sale, null);
      }
      case 'buyer-list':
        return stackForBuyer(id, sale);
      case 'stack':
        return ofStack(id);
      case 'list':
        return listOf(id);
    }
  };
}
export type MakeReportContent = ReturnType<typeof createReportContent>;

/** Whom all of them were sold to; blank where that is not known of each, or not one. */
function soldToOf(boards: readonly Pick<BoardRow, 'archived'>[]): string {
  const names = boards.map(({ archived }) => (archived?.code === 'sold' ? archived.note.trim() : ''));
  return new Set(names.map(nameKey)).size === 1 ? names[0]! : '';
}

const boardOfStack = (row: BoardRow): BoardOfStack => ({
  code: row.code,
  speciesName: row.speciesName,
  thicknessMm: row.thicknessMm,
  thicknessQuarters: row.thicknessQuarters,
  widthMm: row.widthMm,
  lengthMm: row.lengthMm,
  layer: row.layer,
  column: row.column,
  latest: row.latest,
  call: row.judgement.call,
});
