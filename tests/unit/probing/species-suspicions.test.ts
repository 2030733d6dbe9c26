import { describe, expect, test } from 'vitest';
import { expectationNow } from '../../../shared-core/probing/suspicions/expectation.ts';
import {
  type BoardOfRound,
  judgeRound,
  suspicionsOfRound,
} from '../../../shared-core/probing/suspicions/judge-round.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { evidence, lastRound, plainSpecies, readings, TAKEN_AT } from './a-board.ts';

const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, airTempC: 15 } as const;
const BEFORE = '2026-05-06T10:00:00Z';
const elm: Species = { ...plainSpecies, id: 'elm', name: 'Elm', curveId: 'elm-american' };

/**
 * American elm on the curve of the meter's basis: what Douglas-fir shows 17 % at (7.1 MΩ) is 14.0 % in elm, and 20 %
 * (2.14 MΩ) is 16.3 %: W. L. James, FPL-GTR-6 (1988), Table 1 (from memory), between its rows in log resistance.
 */
const ELM = { shell: { shown: 17, mcPct: 14.0 }, core: { shown: 20, mcPct: 16.3 } };

type Round = { shell: number; core: number };
/** A board whose readings are typed as the meter shows them, and what its last round was judged to be. */
function board(before: Round, now: Round | null, species = plainSpecies): BoardOfRound['evidence'] {
  const previous = { ...lastRound(before.shell, before.core, BEFORE), moved: false };
  const bare = evidence(readings([10], [10]), { place: shed, species, previous });
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

const speciesSuspicions = (boards: BoardOfRound['evidence'][]) =>
  suspicionsOfRound(coded(boards)).map((each) =>
    each.map(({ suspicion }) => suspicion).filter(({ rule }) => rule === 'species-unlike-stack'),
  );

/** A board that the meter shows like the others of the stack, entered as elm: so it was judged in the last round too. */
const enteredAsElm = board(
  { shell: 14.6, core: 17.3 },
  { shell: ELM.shell.shown, core: ELM.core.shown },
  elm,
);

describe('a board that is entered as another wood than its stack', () => {
  test('the wood is doubted where it would fit in as the stack’s wood, with both figures', () => {
    const found = speciesSuspicions([...stack, enteredAsElm]);
    expect(found.slice(0, 6).flat()).toEqual([]);
    const suspicion = found[6]![0]!;
    expect(suspicion).toMatchObject({ rule: 'species-unlike-stack', severity: 'questionable' });
    const [asElm, asStack] = [...suspicion.why.matchAll(/at ([\d.]+) %/g)].map((each) => Number(each[1]));
    expect(asElm).toBeCloseTo(ELM.core.mcPct + 0.1, 0);
    // The stack's wood is the one that the meter is made for.
    expect(Math.abs(asStack! - (ELM.core.shown + 0.1))).toBeLessThan(0.15);
    expect(suspicion.whatToDo).toContain('if it is Plain wood, enter it as that');
  });

  test('all its readings are doubted, so that the call does not lean on them', () => {
    const judged = judgeRound(coded([...stack, enteredAsElm]))[6]!;
    expect(
      judged.readings.every((each) => each.suspicions.some(({ severity }) => severity === 'questionable')),
    ).toBe(true);
    expect(judged.call.call).toBe('probe-again');
  });

  test('in its first round it is held against the stack as it stands now', () => {
    const first = { ...enteredAsElm, previous: null };
    expect(speciesSuspicions([...stack, first])[6]).toHaveLength(1);
  });

  test('elm that reads like its stack as elm is elm', () => {
    // 20.6 % and 23.4 % shown are about 17 and 19 % in elm.
    const rightly = board({ shell: 17.8, core: 21.5 }, { shell: 20.6, core: 24.4 }, elm);
    expect(speciesSuspicions([...stack, rightly]).flat()).toEqual([]);
  });

  test('nothing is said where both woods read alike', () => {
    const twin = { ...plainSpecies, id: 'twin', name: 'Twin', curveId: 'baldcypress' };
    const odd = board({ shell: 15.6, core: 18.3 }, { shell: 15, core: 17 }, twin);
    expect(speciesSuspicions([...stack, odd]).flat()).toEqual([]);
  });

  test('where a person looked and confirmed its wood, it is not doubted again', () => {
    const confirmed = { ...enteredAsElm, board: { ...enteredAsElm.board, isSpeciesConfirmed: true } };
    expect(speciesSuspicions([...stack, confirmed])[6]).toEqual([]);
  });

  test('where the user’s own oven-dry checks correct it, the curves have no say', () => {
    const ownCalibration = { a: 1.2, b: 0, standardErrorPct: 0.5 };
    const checked = { ...enteredAsElm, typedBasis: { ...enteredAsElm.typedBasis, ownCalibration } };
    expect(speciesSuspicions([...stack, checked])[6]).toEqual([]);
  });
});

test('a board of the stack’s wood is not doubted for its wood, however wet: it may have been sawn later', () => {
  expect(speciesSuspicions([...stack, board({ shell: 27, core: 28 }, null)]).flat()).toEqual([]);
});

describe('boards that cannot speak for a stack', () => {
  test('fewer than four others say nothing', () => {
    expect(speciesSuspicions([...stack.slice(0, 3), enteredAsElm]).flat()).toEqual([]);
    expect(speciesSuspicions([...stack.slice(0, 4), enteredAsElm])[4]).toHaveLength(1);
  });

  test('nor do boards of another thickness, or in another place', () => {
    const thick = stack.map((each) => ({ ...each, board: { ...each.board, thicknessMm: 52 } }));
    expect(speciesSuspicions([...thick, enteredAsElm])[6]).toEqual([]);
    const elsewhere = stack.map((each) => ({ ...each, place: { ...each.place, name: 'the yard' } }));
    expect(speciesSuspicions([...elsewhere, enteredAsElm])[6]).toEqual([]);
  });

  test('nor a stack without a wood that most of its boards have', () => {
    const mixed = stack.map((each, index) => (index < 3 ? { ...each, species: elm } : each));
    expect(speciesSuspicions([...mixed, enteredAsElm])[6]!).toEqual([]);
  });
});
