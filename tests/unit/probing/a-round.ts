import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import {
  type BoardOfRound,
  suspicionsOfRound,
} from '../../../shared-core/probing/calls/suspicions-of-round.ts';
import { expectationNow } from '../../../shared-core/probing/suspicions/expectation.ts';
import { averages, evidence, lastRound, lastRoundByAverage, readings, TAKEN_AT } from './a-board.ts';

const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, month: 5, airTempC: 15 } as const;
const BEFORE = '2026-05-06T10:00:00Z';

/** Last round's shell and core of six boards, none like another. */
const SIX: [number, number][] = [
  [15, 18],
  [16, 21],
  [14.5, 17],
  [17, 23],
  [15.5, 20],
  [16.5, 22],
];

function boardOf([shell, core]: [number, number], now: { shell: number; core: number }) {
  return evidence(readings([now.shell, now.shell + 0.2], [now.core, now.core + 0.2]), {
    place: shed,
    previous: { ...lastRound(shell, core, BEFORE), moved: false },
  });
}

/** Six boards as they should read now, moved by what a fault adds to each board's shell and core. */
export function round(offOf: (board: number) => { shell: number; core: number }) {
  return SIX.map((before, index) => {
    const should = expectationNow(boardOf(before, { shell: 10, core: 10 }), TAKEN_AT)!;
    const off = offOf(index);
    const now = { shell: should.shell!.pct + off.shell, core: should.core!.pct + off.core };
    return { code: `ASH-0${index + 1}`, evidence: boardOf(before, now) };
  });
}
/** The same of boards that are read by their average alone, each moved by what a fault adds. */
export function roundByAverage(offOf: (board: number) => number) {
  return SIX.map(([, before], index) => {
    const boardOf = (values: number[]) =>
      evidence(averages(values), {
        place: shed,
        previous: { ...lastRoundByAverage(before, BEFORE), moved: false },
      });
    const now = expectationNow(boardOf([10]), TAKEN_AT)!.average.pct + offOf(index);
    return { code: `ASH-0${index + 1}`, evidence: boardOf([now - 0.1, now, now + 0.1]) };
  });
}
export const sound = { shell: 0, core: 0 };

/** All boards of a round judged together: each by itself, and with the suspicions that the round raises. */
export function judgeRound(boards: readonly BoardOfRound[]): Assessment[] {
  const suspicions = suspicionsOfRound(boards);
  return boards.map(({ evidence }, index) => judgeBoard(evidence, suspicions[index]));
}
