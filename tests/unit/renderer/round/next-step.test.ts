import { expect, test } from 'vitest';
import { nextStep } from '../../../../renderer/screens/round/next-step.ts';
import { aBoard, aReading, read } from './a-round.ts';

test('says which depth, where along the board and how deep the pins go', () => {
  expect(nextStep(aBoard(1), 1, false, 'metric')).toBe(
    'Core, 60 cm from the left end: pins to 25 mm, mid-thickness.',
  );
});

test('says it in inches where those are the person’s', () => {
  expect(nextStep(aBoard(1), 0, false, 'imperial')).toBe(
    'Shell, 24 in from the left end: pins to 3/16 in, just under the face.',
  );
});

test('with every spot read, says the call and what Enter does', () => {
  const board = read(aBoard(1), [aReading(1)], 'bring-in');
  expect(nextStep(board, null, false, 'metric')).toBe(
    'All spots read: bring in. Enter goes to the next board.',
  );
  expect(nextStep(board, null, true, 'metric')).toBe('All spots read: bring in. Enter finishes the round.');
});
