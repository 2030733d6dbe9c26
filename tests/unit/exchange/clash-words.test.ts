import { expect, test } from 'vitest';
import { clashField } from '../../../shared-core/exchange/clash-words.ts';
import { tableOf, yardTableNames } from '../../../shared-core/exchange/yard-tables.ts';
import { say } from '../app/a-window.ts';

const shown = (field: string, value: unknown, record: object = {}) => {
  const made = clashField(field, value, { uuid: '', ...record });
  const text = made.shown !== null && typeof made.shown === 'object' ? say(made.shown) : made.shown;
  return `${say(made.label)}: ${text}`;
};

test('fields have the words and the units of their forms', () => {
  expect(shown('thicknessMm', 52)).toBe('Thickness: 52 mm');
  expect(shown('widthMm', 210)).toBe('Width: 210 mm');
  expect(shown('sawing', 'quarter')).toBe('Sawing: Quarter-sawn');
  expect(shown('sawnOn', '2025-03-15')).toBe('Sawn on: Mar 15, 2025');
  expect(shown('note', '')).toBe('Note: null');
  expect(shown('archivedWhy', { code: 'sold', note: 'Miller' })).toBe('Why it left: Sold: Miller');
});

test('a round of which only the day is known has no time', () => {
  const startedAt = '2025-06-10T17:00:00.000Z';
  expect(shown('startedAt', startedAt, { datedBy: 'day' })).toBe('Date: Jun 10, 2025');
  expect(shown('startedAt', startedAt, { datedBy: 'time' })).toMatch(/^Date: Jun 10, 2025, \d/);
});

test('a correction is called by what it corrects', () => {
  expect(shown('value', { code: 'knot' }, { field: 'excluded' })).toBe('Excluded: Knot');
  expect(shown('value', null, { field: 'excluded' })).toBe('Excluded: No');
  expect(shown('value', 12, { field: 'depthMm' })).toBe('Depth: 12 mm');
});

test('what the file has in an unknown form is shown as it is', () => {
  expect(shown('sawing', 'spiral')).toBe('Sawing: spiral');
  expect(shown('widthMm', 'wide')).toBe('Width: wide');
});

test('every field of every table can be shown', () => {
  for (const named of yardTableNames)
    for (const field of Object.keys(tableOf(named).fields))
      for (const value of [null, '', 'a', 1, { a: 1 }, [1]]) expect(shown(field, value)).not.toMatch(/[{}]/);
});
