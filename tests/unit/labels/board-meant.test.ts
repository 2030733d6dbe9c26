import { expect, test } from 'vitest';
import { boardsMeant } from '../../../shared-core/labels/board-meant.ts';

const boards = ['WAL-01', 'WAL-10', 'WAL-11', 'OAK-12'].map((code) => ({ code }));

test.each([
  [' wal-01 ', ['WAL-01'], 'the whole ID, in any capitals'],
  ['1', ['WAL-01'], 'its number, though others have that digit'],
  ['oak', ['OAK-12'], 'a part that only one has'],
  ['wal', ['WAL-01', 'WAL-10', 'WAL-11'], 'a part that several have'],
  ['elm', [], 'what none has'],
])('%j means %j: %s', (typed, codes) => {
  expect(boardsMeant(boards, typed).map(({ code }) => code)).toEqual(codes);
});
