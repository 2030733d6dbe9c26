import { expect, test } from 'vitest';
import { actionOf, isOfValue } from '../../../../renderer/features/round/round-keys.ts';

const key = (name: string, held: Partial<KeyboardEvent> = {}) => ({
  key: name,
  shiftKey: false,
  ctrlKey: false,
  altKey: false,
  metaKey: false,
  repeat: false,
  ...held,
});

test.each([
  [' ', 'take'],
  ['Backspace', 'undo-last'],
  ['Delete', 'exclude-last'],
  ['Enter', 'leave-board'],
  ['PageDown', 'next-board'],
  ['ArrowRight', 'next-board'],
  ['PageUp', 'previous-board'],
  ['ArrowLeft', 'previous-board'],
  ['Home', 'first-board'],
  ['End', 'last-board'],
  ['ArrowUp', 'spot-up'],
  ['ArrowDown', 'spot-down'],
  ['g', 'go-to-board'],
  ['u', 'use-meant'],
  ['t', 'temperature'],
  ['T', 'temperature'],
  ['?', 'help'],
  ['7', 'start-typing'],
  ['q', null],
  ['F5', null],
] as const)('with the meter live, %j is %j', (name, action) => {
  expect(actionOf(key(name), null)).toBe(action);
});

test('what a pedal sends does not put right, go on with or save a typed value otherwise than its key', () => {
  const pedals = { 'go-on': 'Backspace', 'go-back': 'k', 'undo-last': 'Enter', note: null };
  expect(actionOf(key('Backspace'), '12.7', 'pct', pedals)).toBeNull();
  expect(actionOf(key('k'), '120', 'ohm', pedals)).toBeNull();
  expect(actionOf(key('Enter'), '12.6', 'pct', pedals)).toBe('save-typed');
  expect(actionOf(key('Backspace'), '', 'pct', pedals)).toBe('go-on');
  expect(actionOf(key('k'), null, 'pct', pedals)).toBe('go-back');
  expect(actionOf(key('Enter'), null, 'pct', pedals)).toBe('undo-last');
});

test.each([
  ['Enter', '', 'leave-board'],
  ['Enter', '12.4', 'save-typed'],
  ['Backspace', '', 'undo-last'],
  ['Delete', '', 'exclude-last'],
  ['Delete', '12', null],
  ['Backspace', '12', null],
  ['ArrowLeft', '', 'previous-board'],
  ['ArrowLeft', '12', null],
  ['Home', '', 'first-board'],
  ['Home', '12', null],
  ['End', '12', null],
  ['ArrowUp', '12', 'spot-up'],
  ['PageUp', '12', 'previous-board'],
  [' ', '', null],
  ['7', '', null],
  [',', '12', null],
  ['t', '12', 'temperature'],
  ['Escape', '12', 'stop-typing'],
] as const)('typing, %j on “%s” is %j', (name, typed, action) => {
  expect(actionOf(key(name), typed)).toBe(action);
});

test.each([
  ['k', '800', null],
  ['G', '2.2', null],
  ['m', '12', null],
  ['m', '', 'meter'],
  ['g', '', 'go-to-board'],
  ['g', '2.2G', 'go-to-board'],
  ['t', '12', 'temperature'],
  ['Enter', '800k', 'save-typed'],
] as const)('typing ohms, %j on “%s” is %j: a prefix is part of the value', (name, typed, action) => {
  expect(actionOf(key(name), typed, 'ohm')).toBe(action);
});

test('what says that a value is above a number comes before or behind it', () => {
  expect(isOfValue('>', '', 'pct')).toBe(true);
  expect(isOfValue('>', '2', 'pct')).toBe(false);
  expect(isOfValue('+', '28', 'pct')).toBe(true);
  expect(isOfValue('+', '', 'pct')).toBe(false);
});

test('Shift and Enter goes back, whatever was typed', () => {
  expect(actionOf(key('Enter', { shiftKey: true }), null)).toBe('previous-board');
  expect(actionOf(key('Enter', { shiftKey: true }), '12')).toBe('previous-board');
});

test('a key with Ctrl, Alt or Cmd belongs to the browser', () => {
  for (const held of [{ ctrlKey: true }, { altKey: true }, { metaKey: true }]) {
    expect(actionOf(key('t', held), null)).toBeNull();
  }
});

test('a glove resting on a key takes one reading, not fifty; walking along spots may repeat', () => {
  for (const name of [' ', 'Enter', 'Backspace', '7']) {
    expect(actionOf(key(name, { repeat: true }), null)).toBeNull();
  }
  expect(actionOf(key('ArrowDown', { repeat: true }), null)).toBe('spot-down');
});
