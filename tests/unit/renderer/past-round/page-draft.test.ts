import { describe, expect, test } from 'vitest';
import {
  blankPage,
  depthsOf,
  filled,
  startOf,
  typedCells,
  withPins,
} from '../../../../renderer/features/past-round/page-draft.ts';
import { arrowCell, nextCell, pastedCells } from '../../../../renderer/form/grid-moves.ts';
import { readCell } from '../../../../shared-core/labels/typed-value.ts';

describe('a cell', () => {
  test('is a reading as the meter shows it, with its percent sign or a decimal comma', () => {
    for (const [text, raw] of [
      ['24%', 24],
      ['24 %', 24],
      ['24,5', 24.5],
      ['24,5%', 24.5],
    ] as const)
      expect(readCell(text, 'pct')).toEqual({ raw });
  });
  test('without a number says so, and not that something was lost', () => {
    expect(readCell('wet', 'pct')).toMatchObject({ problem: { code: 'past-round.without-number' } });
    expect(readCell('damp', 'pct')).toMatchObject({ problem: { code: 'past-round.not-a-number' } });
    expect(readCell('24%', 'ohm')).toHaveProperty('problem');
  });
});

test('pins of unknown length leave the depth unknown, until a meter with a pin length is chosen', () => {
  expect(depthsOf(withPins(blankPage, null))[0]).toBe('unknown');
  expect(depthsOf(withPins(blankPage, 8))[0]).toBe('pins');
  expect(withPins({ ...blankPage, depth: 'typed' }, null).depth).toBe('typed');
});

describe('what is pasted', () => {
  test('is cells of tabs and lines, however lines end', () => {
    expect(pastedCells('12.4\t13\r\n12.6\t13.1\r\n')).toEqual([
      ['12.4', '13'],
      ['12.6', '13.1'],
    ]);
    expect(pastedCells('12.4\n12.6')).toEqual([['12.4'], ['12.6']]);
    expect(pastedCells('12,4\t')).toEqual([['12,4', '']]);
  });
  test('is one value for the cell itself', () => {
    expect(pastedCells('12.4')).toBeNull();
    expect(pastedCells('12.4\n')).toBeNull();
  });
  test('fills from a cell on, brings columns, and leaves what its blanks are on', () => {
    const page = { ...blankPage, columns: 2, texts: { 7: ['1', '2'], 8: ['3'] } };
    const { page: made, beyond } = filled(
      page,
      [7, 8],
      { boardId: 7, column: 1 },
      [['12', '13'], ['', '14'], ['15']],
      12,
    );
    expect(made.texts).toEqual({ 7: ['1', '12', '13'], 8: ['3', '', '14'] });
    expect([made.columns, beyond]).toEqual([3, 1]);
    expect(typedCells(made)).toBe(5);
  });
  test('no page gets more columns than it can have', () => {
    const { page, beyond } = filled(blankPage, [7], { boardId: 7, column: 3 }, [['1', '2', '3']], 5);
    expect([page.columns, beyond]).toEqual([5, 1]);
  });
});

describe('where a key leads', () => {
  const size = { rows: 2, columns: 3 };
  test('Enter goes down the columns, or across the rows, and ends', () => {
    expect(nextCell({ row: 1, column: 0 }, size, 'down', 1)).toEqual({ row: 0, column: 1 });
    expect(nextCell({ row: 0, column: 2 }, size, 'across', 1)).toEqual({ row: 1, column: 0 });
    expect(nextCell({ row: 1, column: 2 }, size, 'down', 1)).toBeNull();
    expect(nextCell({ row: 0, column: 1 }, size, 'down', -1)).toEqual({ row: 1, column: 0 });
    expect(nextCell({ row: 0, column: 0 }, size, 'across', -1)).toBeNull();
  });
  test('an arrow goes to the next cell only from the end of what is typed', () => {
    const inside = { atStart: false, atEnd: false };
    const atEnd = { atStart: false, atEnd: true };
    expect(arrowCell('ArrowRight', { row: 0, column: 0 }, size, inside)).toBeNull();
    expect(arrowCell('ArrowRight', { row: 0, column: 0 }, size, atEnd)).toEqual({ row: 0, column: 1 });
    expect(arrowCell('ArrowDown', { row: 0, column: 0 }, size, inside)).toEqual({ row: 1, column: 0 });
    expect(arrowCell('ArrowDown', { row: 1, column: 0 }, size, inside)).toBeNull();
  });
});

describe('what a page says', () => {
  test('without a time it was at noon, and today now', () => {
    const now = new Date(2026, 5, 1, 8);
    const at = (day: string | null, time = '') => startOf({ day, time }, now);
    expect(at('2026-05-02')).toBe(new Date(2026, 4, 2, 12).toISOString());
    expect(at('2026-05-02', '07:30')).toBe(new Date(2026, 4, 2, 7, 30).toISOString());
    expect(at('2026-06-01')).toBe(now.toISOString());
    expect(at(null)).toBeNull();
    // A year while it is typed.
    expect(at('0202-05-02')).toBeNull();
  });
  test('a depth that is blank or cannot be is not known', () => {
    const page = { ...blankPage, columns: 4, depth: 'typed' as const, depthsMm: [6, null, Number.NaN] };
    expect(depthsOf(page)).toEqual([6, 'unknown', 'unknown', 'unknown']);
  });
});
