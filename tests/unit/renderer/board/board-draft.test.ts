// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import {
  type BoardDraft,
  boardOf,
  boardProblems,
  changedBoard,
  draftOfBoard,
  emptyBoardDraft,
} from '../../../../renderer/features/board/board-draft.ts';
import type { Board } from '../../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../../shared-core/units/length.ts';
import { english } from '../../../../shared-core/words/en/index.ts';
import { createWords } from '../../../../shared-core/words/words.ts';

const board: Board = {
  id: 4,
  code: 'OAK-04',
  stackId: 1,
  speciesId: 'oak-white',
  thicknessMm: 27,
  thicknessQuarters: null,
  widthMm: 210,
  lengthMm: 2440,
  sawnOn: '2025-10-01',
  sawing: 'flat',
  ringRadiusMm: 140,
  barkSide: 'down-bark-on',
  barkOffOn: null,
  log: 'Ridge',
  layer: 1,
  column: 2,
  note: '',
};

/** What a person reads at each field. */
function problemsOf(draft: BoardDraft, units: DisplayUnits): Record<string, string> {
  const { say } = createWords({
    catalog: english,
    locale: 'en-US',
    timeZone: 'America/Chicago',
    units,
    today: null,
  });
  const problems = Object.entries(boardProblems(draft, units));
  return Object.fromEntries(problems.map(([field, problem]) => [field, say(problem)]));
}

describe('A board in a form', () => {
  test.each(['metric', 'imperial'] as const)(
    'opened and saved untouched in %s units stays exactly as it was: only what is shown is rounded',
    (units) => {
      expect(changedBoard(board, draftOfBoard(board, units), units)).toEqual(board);
    },
  );

  test('a size typed in inches is saved in mm', () => {
    const draft = { ...draftOfBoard(board, 'imperial'), thickness: '1 1/8' };
    // 1 in = 25.4 mm exactly, by definition.
    const changed = changedBoard(board, draft, 'imperial');
    expect(changed.thicknessMm).toBeCloseTo(28.575, 9);
    expect(changed.widthMm).toBe(210);
    expect(changed.ringRadiusMm).toBe(140);
  });

  test('what is left blank is unknown, never zero', () => {
    const made = boardOf(
      { ...emptyBoardDraft, code: 'a-1', speciesId: 'oak-white', thickness: '27' },
      1,
      'metric',
    );
    expect(made).toMatchObject({ code: 'A-1', widthMm: null, lengthMm: null, sawnOn: null, layer: null });
    expect(made).toMatchObject({ ringRadiusMm: null, barkSide: 'unknown' });
  });

  test('shows what is wrong at each field', () => {
    const draft = {
      ...emptyBoardDraft,
      code: 'OAK 7',
      thickness: '500',
      width: 'wide',
      lengthMm: 10,
      ringRadius: '4',
      layer: 1.5,
      column: 101,
    };
    expect(problemsOf(draft, 'metric')).toEqual({
      code: 'A board ID has up to 16 letters, digits and hyphens, like OAK-07.',
      speciesId: 'Choose a species.',
      thickness: 'Must be 3 mm to 400 mm.',
      width: '“wide” is not a length. Type it like 27 mm or 5/4.',
      lengthMm: 'Must be 5 cm to 20.0 m.',
      ringRadius: 'Must be 5 mm to 3000 mm.',
      layer: 'Type a whole number from 1 to 500.',
      column: 'Type a whole number from 1 to 100.',
    });
    // In inches, nothing metric is left.
    expect(problemsOf(draft, 'imperial')).toMatchObject({
      thickness: 'Must be 1/8 in to 15 3/4 in.',
      width: '“wide” is not a length. Type it like 1 1/16 in or 5/4.',
      lengthMm: 'Must be 2 in to 65 ft 7 in.',
    });
    expect(problemsOf({ ...emptyBoardDraft, code: 'A1', speciesId: 'oak-white' }, 'metric')).toEqual({
      thickness: 'Type the thickness. It sets how deep the pins go.',
    });
  });

  // 1 in = 25.4 mm exactly, by definition.
  test.each([
    ['8/4', 50.8, 8],
    ['5/4', 31.75, 5],
    ['3/4', 19.05, null],
    ['54 mm', 54, null],
    ['2 1/8 in', 53.975, null],
  ])('of a thickness typed as %s is %f mm, quarters: %s', (thickness, thicknessMm, thicknessQuarters) => {
    for (const units of ['metric', 'imperial'] as const) {
      const changed = changedBoard(board, { ...draftOfBoard(board, units), thickness }, units);
      expect(changed.thicknessMm).toBeCloseTo(thicknessMm, 9);
      expect(changed.thicknessQuarters).toBe(thicknessQuarters);
    }
  });

  test.each([
    [{ thicknessMm: 50.8, thicknessQuarters: 8 }, '8/4', '8/4'],
    [{ thicknessMm: 54, thicknessQuarters: null }, '54', '2.126'],
    [{ thicknessMm: 53.975, thicknessQuarters: null }, '53.975', '2 1/8'],
    [{ thicknessMm: 9.5, thicknessQuarters: null }, '9.5', '0.374'],
  ])('%o is "%s" in its field, in inches "%s", and stays as it is', (thickness, metric, imperial) => {
    const given = { ...board, ...thickness };
    for (const [units, text] of [
      ['metric', metric],
      ['imperial', imperial],
    ] as const) {
      expect(draftOfBoard(given, units).thickness).toBe(text);
      expect(changedBoard(given, draftOfBoard(given, units), units)).toEqual(given);
    }
  });

  test.each(['54', '2 in'])('given as 8/4 and then changed to %s is no longer 8/4', (thickness) => {
    const given = { ...board, thicknessMm: 50.8, thicknessQuarters: 8 };
    const draft = { ...draftOfBoard(given, 'metric'), thickness };
    expect(changedBoard(given, draft, 'metric').thicknessQuarters).toBeNull();
  });
});
