// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import {
  boardOf,
  boardProblems,
  changedBoard,
  draftOfBoard,
  emptyBoardDraft,
} from '../../../../renderer/screens/board/board-draft.ts';
import type { Board } from '../../../../shared-core/contract/yard.ts';

const board: Board = {
  id: 4,
  code: 'OAK-04',
  stackId: 1,
  speciesId: 'oak-white',
  thicknessMm: 27,
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

describe('A board in a form', () => {
  test.each(['metric', 'imperial'] as const)(
    'opened and saved untouched in %s units stays exactly as it was: what is shown is rounded, what is kept is not',
    (units) => {
      expect(changedBoard(board, draftOfBoard(board, units), units)).toEqual(board);
    },
  );

  test('a size typed anew in inches is kept in mm', () => {
    const draft = { ...draftOfBoard(board, 'imperial'), thickness: '1 1/8', length: 8 };
    // 1 in = 25.4 mm and 1 ft = 12 in exactly, by definition.
    const changed = changedBoard(board, draft, 'imperial');
    expect(changed.thicknessMm).toBeCloseTo(28.575, 9);
    expect(changed.lengthMm).toBeCloseTo(2438.4, 9);
    expect(changed.widthMm).toBe(210);
    expect(changed.ringRadiusMm).toBe(140);
  });

  test('what is left empty is not known, never zero', () => {
    const made = boardOf(
      { ...emptyBoardDraft, code: 'a-1', speciesId: 'oak-white', thickness: '27' },
      1,
      'metric',
    );
    expect(made).toMatchObject({ code: 'A-1', widthMm: null, lengthMm: null, sawnOn: null, layer: null });
    expect(made).toMatchObject({ ringRadiusMm: null, barkSide: 'unknown' });
  });

  test('says what is wrong at each field', () => {
    const draft = {
      ...emptyBoardDraft,
      code: 'OAK 7',
      thickness: '500',
      width: 'wide',
      length: 0.01,
      ringRadius: '4',
      layer: 1.5,
      column: 101,
    };
    expect(boardProblems(draft, 'metric')).toEqual({
      code: 'A board ID has up to 16 letters, digits and hyphens, like OAK-07.',
      speciesId: 'Choose the wood.',
      thickness: 'This must be 3 mm to 400 mm.',
      width: '“wide” is not a length. Type it like 27 mm, 1 1/16 in, or 5/4 for a quarter name.',
      length: 'This must be 0.05 to 20 m.',
      ringRadius: 'This must be 5 mm to 3000 mm.',
      layer: 'A whole number from 1 to 500.',
      column: 'A whole number from 1 to 100.',
    });
    expect(boardProblems({ ...emptyBoardDraft, code: 'A1', speciesId: 'oak-white' }, 'metric')).toEqual({
      thickness: 'Give the thickness; the depth of the pins follows from it.',
    });
  });
});
