import { createHash } from 'node:crypto';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ReportCheck } from '../../../shared-core/contract/report.ts';
import type { LatestFinding } from '../../../shared-core/contract/yard.ts';
import { callSchema } from '../../../shared-core/probing/calls/assessment.ts';
import { toldDepths } from '../../../shared-core/probing/readings/told-depths.ts';
import {
  checkCodeText,
  digestText,
  EXAMPLE_CHECK_CODE,
  instantOfMinute,
  minuteOf,
  parsedCheckCode,
} from '../../../shared-core/reports/check-code.ts';
import { printedFacts, type SheetFacts } from '../../../shared-core/reports/printed-facts.ts';
import { message } from '../../../shared-core/words/message.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';
import { sampleBoardState } from '../judging/sample-boards.ts';

/** What was saved in the minute of the code counts as printed. */
const endOfMinute = (minute: number): number => Date.parse(instantOfMinute(minute + 1)) - 1;

const digestOf = (facts: string): string => digestText(createHash('sha256').update(facts).digest());

/** The check code of a sheet that states these facts, printed now. */
export function codeOfSheet(facts: SheetFacts, printedAt: string): string {
  const minute = minuteOf(printedAt);
  const { code, latest } = facts.board;
  const stated = printedFacts(facts, endOfMinute(minute), latest, latest?.call ?? null);
  return checkCodeText({ boardCode: code, kind: facts.kind, minute, digest: digestOf(stated) });
}

/** Tells whether a sheet states what is in this yard, as of the minute in which it was printed. */
export const checkSheet =
  (context: QueryContext, ask: Pick<Queries, 'boards.get'>): Queries['reports.check'] =>
  async ({ checkCode }) => {
    const parsed = parsedCheckCode(checkCode);
    if (!parsed.ok) {
      throw new Refusal(
        parsed.problem === 'mistyped'
          ? message('check.mistyped')
          : message('check.no-check-code', { example: EXAMPLE_CHECK_CODE }),
      );
    }
    const { boardCode, kind, minute, digest } = parsed.code;
    const { boards, endUses, stacks } = context.yard();
    const id = boards.idByCode(boardCode) ?? boards.mergedByCode(boardCode);
    if (id === undefined) throw new Refusal(message('check.no-board', { boardCode }));
    const { board, moves, readings, findings } = await ask['boards.get']({ id }, '');
    const endUse = orRefuse(endUses.get(orRefuse(stacks.endUseId(board.stackId), 'stack')), 'use');
    const facts: SheetFacts = {
      kind,
      board,
      endUse,
      readings,
      moves,
      samples: sampleBoardState(context.yard(), id),
    };
    const untilMs = endOfMinute(minute);
    const then = findings.filter(({ at }) => Date.parse(at) <= untilMs);
    // Which of them the sheet stated, and with which call, is not in the code: the place of a board has its part in that.
    const candidates: (LatestFinding | null)[] = [...then.toReversed(), null];
    const match = candidates
      .flatMap((found) => [null, ...callSchema.options].map((call) => ({ found, call })))
      .find(({ found, call }) => digestOf(printedFacts(facts, untilMs, found, call)) === digest);
    const now = match ? match.found && { ...match.found, call: match.call } : board.latest;
    return {
      kind,
      boardId: id,
      boardCode: board.code,
      speciesName: board.speciesName,
      printedAt: instantOfMinute(minute),
      matches: match !== undefined,
      stated: now && {
        at: now.at,
        call: now.call,
        averagePct: now.averagePct,
        shellPct: toldDepths(now).shellPct,
      },
      roundsSince: findings.length - then.length,
    } satisfies ReportCheck;
  };
