import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import { expectationNow } from '../../../shared-core/probing/suspicions/expectation.ts';
import type { WalkedBoard } from '../../../shared-core/probing/suspicions/round-suspicions.ts';
import { speciesSuspicionsOf } from '../../../shared-core/probing/suspicions/species-suspicions.ts';
import {
  averages,
  evidence,
  lastRound,
  lastRoundByAverage,
  plainSpecies,
  readings,
  SCALE,
} from './a-board.ts';
import { board, coded, elm, stack } from './a-stack.ts';

/* How far a board entered as elm may lie from a stack of plain wood, in points that the meter shows. */

const place = stack[0]!.place;
const first = (shell: number, core: number, species = plainSpecies): BoardEvidence =>
  evidence(readings([shell, shell + 0.2], [core, core + 0.2]), { place, species });
const averaged = (pct: number, species = plainSpecies): BoardEvidence =>
  evidence(averages([pct, pct + 0.2, pct + 0.1]), { place, species });

/** Whether the species of the last of these is questioned. */
function isQuestioned(...boards: readonly BoardEvidence[]): boolean {
  const walked = coded([...boards]).map((each): WalkedBoard => {
    const { readings: judged } = judgeBoard(each.evidence);
    return { ...each, readings: judged, expectation: expectationNow(each.evidence, judged.at(-1)!.takenAt) };
  });
  return speciesSuspicionsOf(walked).has(boards.length - 1);
}
/** The same at a row of levels. */
const questioned = (levels: readonly number[], at: (level: number) => BoardEvidence[]): boolean[] =>
  levels.map((level) => isQuestioned(...at(level)));

/** The stack in its first round. */
const stackNow = [
  [17.2, 21.1],
  [17.8, 21.9],
  [18.1, 21.5],
  [17.5, 20.8],
  [17.9, 21.3],
  [17.6, 21.7],
].map(([shell, core]) => first(shell!, core!));
const like = first(17, 20.5, elm);

/** Just out of it, just in it, and again at its other end. */
const inside = [false, true, true, false];

describe('in its first round a board is questioned where it reads like the stack, if as its species', () => {
  test('by shell and core together, and either', () => {
    expect(questioned([14.9, 15, 19.1, 19.2], (x) => [...stackNow, first(x, x + 3.8, elm)])).toEqual(inside);
    expect(questioned([15, 15.1, 18.9, 19], (x) => [...stackNow, first(x, 20.5, elm)])).toEqual(inside);
    expect(questioned([18.6, 18.7, 23.1, 23.2], (x) => [...stackNow, first(17.5, x, elm)])).toEqual(inside);
  });

  test('by how far shell and core lie apart: those of one board are seldom off in opposite ways', () => {
    const steeper = (by: number) => [...stackNow, first(17.5 - by, 21.5 + by, elm)];
    expect(questioned([-1.4, -1.3, 1, 1.1], steeper)).toEqual(inside);
  });

  test('within wider limits where the boards of the stack lie further from each other', () => {
    const wide = [
      [15.2, 18.1],
      [16.8, 21.9],
      [19.1, 24.5],
      [17.5, 20.8],
      [17.9, 21.3],
      [20.6, 25.7],
    ].map(([shell, core]) => first(shell!, core!));
    expect(questioned([13.4, 13.5, 20.7, 20.8], (x) => [...wide, first(x, x + 3.8, elm)])).toEqual(inside);
  });

  test('by its average where that is what was read', () => {
    const averages = [20, 20.6, 20.9, 19.7, 20.2, 20.4].map((pct) => averaged(pct));
    expect(questioned([17.5, 17.6, 21.7, 21.8], (x) => [...averages, averaged(x, elm)])).toEqual(inside);
  });

  test('but not where both species read within two points of each other, as in dry wood', () => {
    const dry = (core: number) => [10.2, 10.8, 10.5, 10, 10.3].map((shell) => first(shell, shell + core));
    expect(isQuestioned(...dry(0.5), first(10.4, 10.9, elm))).toBe(false);
    // The core alone is wet enough to tell.
    expect(isQuestioned(...dry(4), first(10.4, 14.4, elm))).toBe(true);
  });
});

describe('the boards beside it', () => {
  const others = stackNow.slice(0, 4);
  const rightlyElm = first(20.5, 24.3, elm);

  test('are those a tenth thicker or thinner at most', () => {
    const of = (boards: readonly BoardEvidence[], thicknessMm: number) =>
      boards.map((each) => ({ ...each, board: { ...each.board, thicknessMm } }));
    const at = (thicknessMm: number) => isQuestioned(...of(stackNow, thicknessMm), ...of([like], 30));
    expect([26.9, 27, 33, 33.1].map(at)).toEqual([false, true, true, false]);
  });

  test('are compared with each other where more than half are one species', () => {
    const elms = (count: number): BoardEvidence[] => Array.from({ length: count }, () => rightlyElm);
    expect(isQuestioned(...elms(3), ...others, like)).toBe(true);
    expect(isQuestioned(...others, ...elms(4), like)).toBe(false);
    expect(isQuestioned(...others, ...elms(3), like)).toBe(true);
  });

  test('were read at the same depths', () => {
    const shells = evidence(readings([17, 17.2], []), { place, species: elm });
    expect(isQuestioned(...stackNow, shells)).toBe(false);
    expect(isQuestioned(...others.slice(1), shells, like)).toBe(false);
  });
});

describe('what tells nothing of species', () => {
  test('is a reading that a line, and not a curve, turned into moisture content', () => {
    const byLine = { ...elm, id: 'by-line', curveId: null, linear: { a: 1, b: 0 } };
    const asElm = stackNow.map((each) => ({ ...each, species: elm }));
    const bare = { ...byLine, linear: null };
    expect(isQuestioned(...asElm, { ...asElm[0]!, species: bare })).toBe(true);
    expect(isQuestioned(...asElm, { ...asElm[0]!, species: byLine })).toBe(false);
  });

  test('is a board of which one reading was corrected by an oven-dry check', () => {
    const ownCalibration = { a: 1, b: 0, standardErrorPct: 0.5 };
    const meters = { 1: { ...like.typedBasis, ownCalibration } };
    const [one, ...rest] = like.readings;
    const partly = { ...like, meters, readings: [{ ...one!, meterId: 1, meterProfileId: 1 }, ...rest] };
    expect(isQuestioned(...stackNow, like)).toBe(true);
    expect(isQuestioned(...stackNow, partly)).toBe(false);
  });

  test('is a species without a curve, on a meter that shows that species', () => {
    const bare = { ...elm, id: 'bare', curveId: null };
    const asElm = stackNow.map((each) => ({ ...each, species: elm }));
    const shownAs = (speciesId: string | null): BoardEvidence => ({
      ...asElm[0]!,
      species: bare,
      typedBasis: { ...like.typedBasis, scale: { ...SCALE, speciesId } as typeof SCALE },
    });
    expect(isQuestioned(...asElm, shownAs(null))).toBe(true);
    expect(isQuestioned(...asElm, shownAs('bare'))).toBe(false);
  });
});

describe('in later rounds what the last one found counts too', () => {
  /** Shown like the stack now, and in the last round it was like the stack as elm: it dried fast. */
  const [shell, , core] = stack[0]!.readings;
  const fast = board({ shell: 17.8, core: 21.5 }, { shell: shell!.raw, core: core!.raw }, elm);
  const previous = fast.previous!;

  test('so a board that was right as its own species is not questioned', () => {
    expect(isQuestioned(...stack, fast)).toBe(false);
    expect(isQuestioned(...stack, { ...fast, previous: null })).toBe(true);
  });

  test('within limits by both, which are narrower the further it was from the stack before', () => {
    const at = (before: { shell: number; core: number }) => (shown: number) => [
      ...stack,
      board(before, { shell: shown, core: shown + 2.8 }, elm),
    ];
    expect(questioned([11, 11.1, 17.7, 17.8], at({ shell: 14.6, core: 17.3 }))).toEqual(inside);
    expect(questioned([13.5, 13.6, 16.7, 16.8], at({ shell: 15.4, core: 18.9 }))).toEqual(inside);
  });

  test('as much as the others changed since theirs, be that more than drying is expected to or less', () => {
    const changed = (by: number) =>
      stack.map((each) => ({
        ...each,
        readings: each.readings.map((one) => ({ ...one, raw: one.raw + by })),
      }));
    const at = (by: number) => (shown: number) => [
      ...changed(by),
      board({ shell: 14.6, core: 17.3 }, { shell: shown, core: shown + 2.8 }, elm),
    ];
    expect(questioned([16.8, 16.9], at(-1))).toEqual([true, false]);
    expect(questioned([11.6, 11.7, 18.7, 18.8], at(1))).toEqual(inside);
  });

  test('where enough others have such a round: of the same days, not moved since, and by the same depths', () => {
    const of = (boards: readonly BoardEvidence[], more: Partial<NonNullable<BoardEvidence['previous']>>) =>
      boards.map((each) => ({ ...each, previous: { ...each.previous!, ...more } }));
    const others = stack.slice(0, 4);
    const [one, ...rest] = others;
    expect(isQuestioned(...others, fast)).toBe(false);
    expect(isQuestioned(...of([one!], { moved: true }), ...rest, fast)).toBe(true);
    expect(isQuestioned(...of([one!], { takenAt: '2026-05-03T09:00:00Z' }), ...rest, fast)).toBe(true);
    expect(isQuestioned(...of([one!], { takenAt: '2026-05-03T10:00:00Z' }), ...rest, fast)).toBe(false);
    expect(isQuestioned(...of([one!], { takenAt: '2026-05-09T11:00:00Z' }), ...rest, fast)).toBe(true);
    const { estimate } = one!.previous!;
    const halfRead = { ...estimate, corePct: null, countedCore: 0 };
    expect(isQuestioned(...of([one!], { estimate: halfRead }), ...rest, fast)).toBe(true);
    expect(isQuestioned(...of([one!], { estimate: halfRead }), ...stack.slice(1), fast)).toBe(false);
  });

  test('where the board itself has such a round', () => {
    expect(isQuestioned(...stack, { ...fast, previous: { ...previous, moved: true } })).toBe(true);
    const byAverage = { ...lastRoundByAverage(20, previous.takenAt), moved: false };
    expect(isQuestioned(...stack, { ...fast, previous: byAverage })).toBe(true);
    const halfRead = { ...previous.estimate, corePct: null, countedCore: 0 };
    expect(isQuestioned(...stack, { ...fast, previous: { ...previous, estimate: halfRead } })).toBe(true);
  });

  test('where it is known how the stack’s species dries', () => {
    const unknown = { ...plainSpecies, basicSpecificGravity: null };
    const [one, ...rest] = stack;
    expect(isQuestioned({ ...one!, species: unknown }, ...rest, fast)).toBe(true);
    expect(isQuestioned(...rest, { ...one!, species: unknown }, fast)).toBe(false);
  });

  test('of one read by its average, where the last round was as well', () => {
    const round = (before: number, now: number, species = plainSpecies) => ({
      ...averaged(now, species),
      previous: { ...lastRoundByAverage(before, previous.takenAt), moved: false },
    });
    const others = [20, 20.6, 20.9, 19.7, 20.2, 20.4].map((pct) => round(pct, pct - 1.5));
    expect(questioned([12.3, 12.4, 21.7, 21.8], (pct) => [...others, round(16.5, pct, elm)])).toEqual(inside);
    const shown = 18.5;
    const pairs = { ...lastRound(18, 22, previous.takenAt), moved: false };
    expect(isQuestioned(...others, round(20, shown, elm))).toBe(false);
    expect(isQuestioned(...others, { ...round(20, shown, elm), previous: pairs })).toBe(true);
    const [one, ...rest] = others;
    expect(isQuestioned(...rest.slice(2), { ...one!, previous: pairs }, round(20, shown, elm))).toBe(true);
  });
});
