import { describe, expect, test } from 'vitest';
import {
  type BoardOfRound,
  suspicionsOfRound,
} from '../../../shared-core/probing/calls/suspicions-of-round.ts';
import { expectationNow } from '../../../shared-core/probing/suspicions/expectation.ts';
import { LEAST_SHIFT_PCT } from '../../../shared-core/probing/suspicions/species-suspicions.ts';
import { message } from '../../../shared-core/words/message.ts';
import { averages, evidence, lastRoundByAverage, plainSpecies, TAKEN_AT } from './a-board.ts';
import { judgeRound } from './a-round.ts';
import { board, coded, ELM, elm, enteredAsElm, stack } from './a-stack.ts';

const speciesSuspicions = (boards: BoardOfRound['evidence'][]) =>
  suspicionsOfRound(coded(boards)).map((each) =>
    each.map(({ suspicion }) => suspicion).filter(({ rule }) => rule === 'species-unlike-stack'),
  );

describe('a board that is entered as another species than its stack', () => {
  test('its species is questioned where it would fit as the stack’s species, with both figures', () => {
    const found = speciesSuspicions([...stack, enteredAsElm]);
    expect(found.slice(0, 6).flat()).toEqual([]);
    const suspicion = found[6]![0]!;
    expect(suspicion).toMatchObject({ rule: 'species-unlike-stack', severity: 'questionable' });
    const species = { ownSpecies: 'Elm', otherSpecies: 'Plain wood' };
    expect(suspicion.why).toEqual(
      message('suspicion.species-unlike-stack', {
        ...species,
        depth: 'core',
        mcPct: expect.closeTo(ELM.core.mcPct + 0.1, 0),
        // The stack's species is the one that the meter is made for.
        otherPct: expect.closeTo(ELM.core.shown + 0.1, 0),
      }),
    );
    expect(suspicion.whatToDo).toEqual(message('suspicion.species-unlike-stack.do', species));
  });

  test('all its readings are questionable, so the call does not use them', () => {
    const judged = judgeRound(coded([...stack, enteredAsElm]))[6]!;
    expect(
      judged.readings.every((each) => each.suspicions.some(({ severity }) => severity === 'questionable')),
    ).toBe(true);
    expect(judged.call).toBe('probe-again');
  });

  test('in its first round it is compared with the stack as it is now', () => {
    const [shell, , core] = stack[0]!.readings;
    const shownLikeThem = board({ shell: 14.6, core: 17.3 }, { shell: shell!.raw, core: core!.raw }, elm);
    const first = { ...shownLikeThem, previous: null };
    expect(speciesSuspicions([...stack, first])[6]).toHaveLength(1);
  });

  test('elm that reads like its stack as elm is elm', () => {
    // 20.6 % and 23.4 % shown are about 17 and 19 % in elm.
    const rightly = board({ shell: 17.8, core: 21.5 }, { shell: 20.6, core: 24.4 }, elm);
    expect(speciesSuspicions([...stack, rightly]).flat()).toEqual([]);
  });

  test('elm far drier than its stack, also as the other species, dries at its own pace', () => {
    const early = { ...board({ shell: 12, core: 14 }, { shell: 13.5, core: 15.5 }, elm), previous: null };
    const [, , core] = early.readings;
    const asElm = judgeRound(coded([early]))[0]!.readings[2]!.corrected.mcPct!;
    expect(core!.raw - asElm).toBeGreaterThan(LEAST_SHIFT_PCT);
    expect(speciesSuspicions([...stack, early]).flat()).toEqual([]);
  });

  test('no suspicion where both species read alike', () => {
    const twin = { ...plainSpecies, id: 'twin', name: 'Twin', curveId: 'baldcypress' };
    const odd = board({ shell: 15.6, core: 18.3 }, { shell: 15, core: 17 }, twin);
    expect(speciesSuspicions([...stack, odd]).flat()).toEqual([]);
  });

  describe('read by its average alone', () => {
    /** Dried as the model expects, or read as given; its last round was judged by its average. */
    const averaged = (before: number, now: number | null, species = plainSpecies) => {
      const previous = { ...lastRoundByAverage(before, stack[0]!.previous!.takenAt), moved: false };
      const bare = { ...stack[0]!, species, previous };
      const pct = now ?? expectationNow(bare, TAKEN_AT)!.average.pct;
      return { ...bare, readings: evidence(averages([pct, pct + 0.2, pct + 0.1])).readings };
    };
    const others = [20, 20.6, 20.9, 19.7, 20.2, 20.4].map((pct) => averaged(pct, null));
    const shown = others[0]!.readings[0]!.raw;

    test('is questioned as well, in its first round and later, by the average', () => {
      const first = { ...averaged(16.3, shown, elm), previous: null };
      for (const odd of [averaged(16.3, shown, elm), first]) {
        const found = speciesSuspicions([...others, odd]);
        expect(found.slice(0, 6).flat()).toEqual([]);
        expect(found[6]).toHaveLength(1);
        expect(found[6]![0]!.why.facts).toMatchObject({ depth: 'average', otherSpecies: 'Plain wood' });
      }
    });

    test('is not where it reads like its stack as what it is, or where the stack was read by shell and core', () => {
      expect(speciesSuspicions([...others, averaged(20, 23.2, elm)]).flat()).toEqual([]);
      expect(speciesSuspicions([...stack, averaged(16.3, shown, elm)]).flat()).toEqual([]);
    });
  });

  test('a confirmed species is not questioned again', () => {
    const confirmed = { ...enteredAsElm, board: { ...enteredAsElm.board, isSpeciesConfirmed: true } };
    expect(speciesSuspicions([...stack, confirmed])[6]).toEqual([]);
  });

  test('where the user’s own oven-dry checks correct it, the curves have no say', () => {
    const ownCalibration = { a: 1.2, b: 0, standardErrorPct: 0.5 };
    const checked = { ...enteredAsElm, typedBasis: { ...enteredAsElm.typedBasis, ownCalibration } };
    expect(speciesSuspicions([...stack, checked])[6]).toEqual([]);
  });
});

test('a board of the stack’s species is not questioned, however wet: it may have been sawn later', () => {
  expect(speciesSuspicions([...stack, board({ shell: 27, core: 28 }, null)]).flat()).toEqual([]);
});

describe('boards that cannot speak for a stack', () => {
  test('fewer than four others say nothing', () => {
    expect(speciesSuspicions([...stack.slice(0, 3), enteredAsElm]).flat()).toEqual([]);
    expect(speciesSuspicions([...stack.slice(0, 4), enteredAsElm])[4]).toHaveLength(1);
  });

  test('boards of another thickness, or in another place, say nothing', () => {
    const thick = stack.map((each) => ({ ...each, board: { ...each.board, thicknessMm: 52 } }));
    expect(speciesSuspicions([...thick, enteredAsElm])[6]).toEqual([]);
    const elsewhere = stack.map((each) => ({ ...each, place: { ...each.place, name: 'the yard' } }));
    expect(speciesSuspicions([...elsewhere, enteredAsElm])[6]).toEqual([]);
  });

  test('a stack without a species that most of its boards have says nothing', () => {
    const mixed = stack.map((each, index) => (index < 3 ? { ...each, species: elm } : each));
    expect(speciesSuspicions([...mixed, enteredAsElm])[6]!).toEqual([]);
  });
});
