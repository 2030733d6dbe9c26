import { describe, expect, test } from 'vitest';
import { expectationNow } from '../../../shared-core/probing/expectation.ts';
import { type BoardOfRound, doubtsOfRound, judgeRound } from '../../../shared-core/probing/judge-round.ts';
import type { Wood } from '../../../shared-core/wood/wood.ts';
import { evidence, lastRound, plainWood, readings, TAKEN_AT } from './a-board.ts';

const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, airTempC: 15 } as const;
const BEFORE = '2026-05-06T10:00:00Z';
const elm: Wood = { ...plainWood, id: 'elm', name: 'Elm', curveId: 'elm-american' };

/**
 * American elm on the curve of the meter's basis: what Douglas-fir shows 17 % at (7.1 MΩ) is 14.0 % in elm, and 20 %
 * (2.14 MΩ) is 16.3 %: W. L. James, FPL-GTR-6 (1988), Table 1 (from memory), between its rows in log resistance.
 */
const ELM = { shell: { shown: 17, mcPct: 14.0 }, core: { shown: 20, mcPct: 16.3 } };

type Round = { shell: number; core: number };
/** A board whose readings are typed as the meter shows them, and what its last round was judged to be. */
function board(before: Round, now: Round | null, wood = plainWood): BoardOfRound['evidence'] {
  const previous = { ...lastRound(before.shell, before.core, BEFORE), moved: false };
  const bare = evidence(readings([10], [10]), { place: shed, wood, previous });
  const should = expectationNow(bare, TAKEN_AT)!;
  const { shell, core } = now ?? { shell: should.shell.pct, core: should.core.pct };
  return { ...bare, readings: readings([shell, shell + 0.2], [core, core + 0.2]) };
}

const coded = (boards: BoardOfRound['evidence'][]): BoardOfRound[] =>
  boards.map((each, index) => ({ code: `ASH-0${index + 1}`, evidence: each }));

/** Boards of plain wood that all dried as the model leads to expect, about 17 % at the shell and 20 % in the core. */
const stack = [
  [17.3, 21.2],
  [17.9, 22.0],
  [18.2, 21.6],
  [17.6, 20.9],
  [18.0, 21.4],
  [17.7, 21.8],
].map(([shell, core]) => board({ shell: shell!, core: core! }, null));

const woodDoubts = (boards: BoardOfRound['evidence'][]) =>
  doubtsOfRound(coded(boards)).map((each) =>
    each.map(({ suspicion }) => suspicion).filter(({ rule }) => rule === 'wood-unlike-stack'),
  );

/** A board that the meter shows like the others of the stack, entered as elm: so it was judged in the last round too. */
const enteredAsElm = board(
  { shell: 14.6, core: 17.3 },
  { shell: ELM.shell.shown, core: ELM.core.shown },
  elm,
);

describe('a board that is entered as another wood than its stack', () => {
  test('the wood is doubted where it would fit in as the stack’s wood, with both figures', () => {
    const found = woodDoubts([...stack, enteredAsElm]);
    expect(found.slice(0, 6).flat()).toEqual([]);
    const doubt = found[6]![0]!;
    expect(doubt).toMatchObject({ rule: 'wood-unlike-stack', weight: 'doubt' });
    const [asElm, asStack] = [...doubt.why.matchAll(/at ([\d.]+) %/g)].map((each) => Number(each[1]));
    expect(asElm).toBeCloseTo(ELM.core.mcPct + 0.1, 0);
    // The stack's wood is the one that the meter is made for.
    expect(Math.abs(asStack! - (ELM.core.shown + 0.1))).toBeLessThan(0.15);
    expect(doubt.whatToDo).toContain('if it is Plain wood, enter it as that');
  });

  test('all its readings are doubted, so that the call does not lean on them', () => {
    const judged = judgeRound(coded([...stack, enteredAsElm]))[6]!;
    expect(judged.readings.every((each) => each.suspicions.some(({ weight }) => weight === 'doubt'))).toBe(
      true,
    );
    expect(judged.call.verdict).toBe('probe-again');
  });

  test('in its first round it is held against the stack as it stands now', () => {
    const first = { ...enteredAsElm, previous: null };
    expect(woodDoubts([...stack, first])[6]).toHaveLength(1);
  });

  test('elm that reads like its stack as elm is elm', () => {
    // 20.6 % and 23.4 % shown are about 17 and 19 % in elm.
    const rightly = board({ shell: 17.8, core: 21.5 }, { shell: 20.6, core: 24.4 }, elm);
    expect(woodDoubts([...stack, rightly]).flat()).toEqual([]);
  });

  test('nothing is said where both woods read alike', () => {
    const twin = { ...plainWood, id: 'twin', name: 'Twin', curveId: 'baldcypress' };
    const odd = board({ shell: 15.6, core: 18.3 }, { shell: 15, core: 17 }, twin);
    expect(woodDoubts([...stack, odd]).flat()).toEqual([]);
  });

  test('where a person looked and confirmed its wood, it is not doubted again', () => {
    const confirmed = { ...enteredAsElm, board: { ...enteredAsElm.board, isWoodConfirmed: true } };
    expect(woodDoubts([...stack, confirmed])[6]).toEqual([]);
  });

  test('where the user’s own oven-dry checks correct it, the curves have no say', () => {
    const ownCalibration = { a: 1.2, b: 0, standardErrorPct: 0.5 };
    const checked = { ...enteredAsElm, typedBasis: { ...enteredAsElm.typedBasis, ownCalibration } };
    expect(woodDoubts([...stack, checked])[6]).toEqual([]);
  });
});

test('a board of the stack’s wood is not doubted for its wood, however wet: it may have been sawn later', () => {
  expect(woodDoubts([...stack, board({ shell: 27, core: 28 }, null)]).flat()).toEqual([]);
});

describe('boards that cannot speak for a stack', () => {
  test('fewer than four others say nothing', () => {
    expect(woodDoubts([...stack.slice(0, 3), enteredAsElm]).flat()).toEqual([]);
    expect(woodDoubts([...stack.slice(0, 4), enteredAsElm])[4]).toHaveLength(1);
  });

  test('nor do boards of another thickness, or in another place', () => {
    const thick = stack.map((each) => ({ ...each, board: { ...each.board, thicknessMm: 52 } }));
    expect(woodDoubts([...thick, enteredAsElm])[6]).toEqual([]);
    const elsewhere = stack.map((each) => ({ ...each, place: { ...each.place, name: 'the yard' } }));
    expect(woodDoubts([...elsewhere, enteredAsElm])[6]).toEqual([]);
  });

  test('nor a stack without a wood that most of its boards have', () => {
    const mixed = stack.map((each, index) => (index < 3 ? { ...each, wood: elm } : each));
    expect(woodDoubts([...mixed, enteredAsElm])[6]!).toEqual([]);
  });
});
