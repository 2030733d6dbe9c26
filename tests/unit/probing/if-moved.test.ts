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

test('of a place whose air is not known, or that a board was not judged for yet, nothing is stated', () => {
  const [inShed, inLoft] = ifMoved([board(null)], [shed, place(3, 'Loft', 'shop', null)]).places;
  expect(inShed!.lowestEmcPct).toBe(11.2);
  expect(inLoft).toMatchObject({ lowestEmcPct: null, ready: null, isForecast: false, driestInterval: null });
});

test('what keeps a board from its target is stated for each place, with how dry it gets there', () => {
  const [inShed] = ifMoved([board(null)], [shed, room]).places;
  expect(inShed).toMatchObject({ isForecast: true, driestInterval: { minPct: 12, maxPct: 12 } });
});

test('a board that is ready now needs no date: the stack is likely ready with it, on the last day of the others', () => {
  const readies = [on('2027-05-09', '2027-06-20'), on('2027-04-02', '2027-05-01'), { kind: 'now' } as const];
  const [, inRoom] = ifMoved(
    readies.map((each) => board(each)),
    [shed, room],
  ).places;
  expect(inRoom).toMatchObject({ dated: 3, isLikely: true, last: { likely: '2027-05-09' } });
});

test('the wettest board decides what the place could do to it', () => {
  const [, inRoom] = ifMoved([board(null), board(null, 24)], [shed, room]).places;
  expect(inRoom!.cautions.map(({ code }) => code)).toEqual(['caution.checks', 'caution.insects']);
  expect(ifMoved([board(null)], [shed, room]).places[1]!.cautions.map(({ code }) => code)).toEqual([
    'caution.insects',
  ]);
});

// Below 20 to 25 %: O. W. Torgeson, FPL Report 1684 (1956).
test('a wet core alone may check in a heated room, also where other boards have none or no average', () => {
  const dry = board(null);
  const unread = { ...dry, judgement: { ...dry.judgement, average: null }, corePct: null };
  const cautioned = (...boards: Parameters<typeof ifMoved>[0]) =>
    ifMoved(boards, [shed, room]).places[1]!.cautions.map(({ code }) => code);
  expect(cautioned({ ...dry, corePct: 28 }, dry, unread)).toEqual(['caution.checks', 'caution.insects']);
  expect(cautioned({ ...unread, corePct: 28 })).toEqual(['caution.checks', 'caution.insects']);
  expect(cautioned(dry, unread)).toEqual(['caution.insects']);
  expect(cautioned(unread)).toEqual(['caution.insects']);
});

test('only boards that come from outdoors bring insects indoors', () => {
  const inRoom = { ...board(null), placeId: 2 };
  const shop = place(3, 'Shop', 'shop', 8);
  expect(ifMoved([inRoom], [shed, room, shop]).places[2]!.cautions).toEqual([]);
  expect(ifMoved([inRoom, board(null)], [shed, room, shop]).places[2]!.cautions).toHaveLength(1);
});
