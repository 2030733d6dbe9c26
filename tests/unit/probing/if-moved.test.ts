import { expect, test } from 'vitest';
import type { Ready } from '../../../shared-core/probing/calls/ready-in.ts';
import { ifMoved, ifMovedSchema } from '../../../shared-core/probing/plan/if-moved.ts';
import { place } from './a-judged-board.ts';

const shed = place(1, 'Pole shed', 'open-shed', 11.2);
const room = place(2, 'Bench room', 'heated-room', 6.5);
const on = (likely: string, to: string | null = null): Ready => ({
  kind: 'likely',
  when: { likely, from: likely, to },
});
const board = (inRoom: Ready | null, averagePct = 14) => ({
  placeId: 1,
  judgement: {
    places: [
      { placeId: 1, ready: { kind: 'too-damp' as const, driestPct: 12 } },
      { placeId: 2, ready: inRoom },
    ],
    average: { averagePct, readOn: null, isEstimated: false },
  },
  corePct: averagePct + 1,
});

test('one board: when it is ready in each place', () => {
  const made = ifMoved([board(on('2027-03-01'))], [shed, room]);
  expect(ifMovedSchema.parse(made)).toEqual(made);
  expect(made.places.map(({ ready }) => ready)).toEqual([
    { kind: 'too-damp', driestPct: 12 },
    on('2027-03-01'),
  ]);
});

test('a stack: how many of its boards have a day there, and the last of these', () => {
  const boards = [
    on('2027-03-01'),
    on('2027-05-09'),
    { kind: 'any-day' } as const,
    { kind: 'not-within', driestPct: 8.6 } as const,
  ];
  const [inShed, inRoom] = ifMoved(
    boards.map((each) => board(each)),
    [shed, room],
  ).places;
  expect(inRoom).toMatchObject({ ready: null, isForecast: true, dated: 3, last: { likely: '2027-05-09' } });
  expect(inShed).toMatchObject({ isForecast: true, dated: 0, last: null });
});

test('a stack that a place does not get there: how dry its boards get at best, and how many it takes out again', () => {
  const boards = [
    { kind: 'not-within', driestPct: 8.6 } as const,
    { kind: 'unlikely', best: { from: '2027-01-01', to: '2027-03-01' }, driestPct: 8.3 } as const,
    { kind: 'leaves', entersOn: null, leavesOn: '2026-12-20' } as const,
  ];
  const [, inRoom] = ifMoved(
    boards.map((each) => board(each)),
    [shed, room],
  ).places;
  expect(inRoom).toMatchObject({ dated: 0, leaving: 1, driestInterval: { minPct: 8.3, maxPct: 8.6 } });
});

test.each([
  [[on('2027-03-01', '2027-04-01'), on('2027-05-09', '2027-06-20')], true],
  [[on('2027-03-01', '2027-04-01'), on('2027-05-09')], false],
  [[on('2027-03-01', '2027-04-01'), { kind: 'any-day' } as const], false],
])('a stack is likely ready by a day only if all its boards are: %j', (readies, isLikely) => {
  const [, inRoom] = ifMoved(
    readies.map((each) => board(each)),
    [shed, room],
  ).places;
  expect(inRoom).toMatchObject({ dated: 2, isLikely });
});

test('the wettest board decides what the place could do to it', () => {
  const [, inRoom] = ifMoved([board(null), board(null, 24)], [shed, room]).places;
  expect(inRoom!.cautions.map(({ code }) => code)).toEqual(['caution.checks', 'caution.insects']);
  expect(ifMoved([board(null)], [shed, room]).places[1]!.cautions.map(({ code }) => code)).toEqual([
    'caution.insects',
  ]);
});
