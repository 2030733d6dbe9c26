/** Where a board is best moved to: where it is ready first, where it gets driest, or back under cover. */
import { describe, expect, test } from 'vitest';
import type { JudgedPlace } from '../../../shared-core/probing/calls/judgement.ts';
import type { Ready } from '../../../shared-core/probing/calls/ready-in.ts';
import { bestOf, driestOf, isHeated, underCover } from '../../../shared-core/probing/calls/where-to.ts';
import { ahead, facts, onDay, place, reach } from './a-judged-board.ts';

const shed = place(1, 'Pole shed', 'open-shed', 11.2);
const shop = place(2, 'Shop', 'shop', 8);
const room = place(3, 'Bench room', 'heated-room', 6.5);
const outdoors = place(4, 'Outdoors', 'outdoors', 12);
const dry = { averagePct: 14, corePct: 15 };
// Above 20 %, or with a core above 25 %: common practice, no source, and Torgeson (FPL Report 1684, 1956).
const wetInside = { averagePct: 18, corePct: 28 };
const never = reach(null, null, null);

test('under cover is a shed first, then a shop, then outdoors, and no heated room', () => {
  expect(underCover([outdoors, room, shop, shed])?.name).toBe('Pole shed');
  expect(underCover([outdoors, room, shop])?.name).toBe('Shop');
  expect(underCover([room, outdoors])?.name).toBe('Outdoors');
  expect(underCover([room])).toBeUndefined();
  expect([shed, shop, room, outdoors].filter(isHeated)).toEqual([room]);
});

describe('a board that no place gets to its target gets driest', () => {
  const driest = (endsPct: number[], places: [JudgedPlace, ...JudgedPlace[]], today = dry) => {
    const made = driestOf(
      facts({ places }),
      ahead(
        14,
        places.map(() => never),
        { endsPct },
      ),
      today,
    );
    return made && [made.name, made.driestPct];
  };

  // A point: common practice, no source.
  test('in the driest other place, if that gains a point or more', () => {
    expect(driest([12, 10, 9], [shed, shop, room])).toEqual(['Bench room', 9]);
    expect(driest([12, 9, 10], [shed, shop, room])).toEqual(['Shop', 9]);
    expect(driest([12, 11], [shed, shop])).toEqual(['Shop', 11]);
    expect(driest([12, 11.1], [shed, shop])).toEqual(['Pole shed', 12]);
    expect(driest([12], [shed])).toEqual(['Pole shed', 12]);
  });

  test('in no heated room while it may check there', () => {
    expect(driest([12, 10, 9], [shed, shop, room], wetInside)).toEqual(['Shop', 10]);
    expect(driest([12, 9], [shed, room], wetInside)).toEqual(['Pole shed', 12]);
  });
});

describe('a board is best moved', () => {
  const best = (
    likelyDays: (number | null)[],
    places: [JudgedPlace, ...JudgedPlace[]],
    {
      today = dry,
      isStuck = false,
      endsPct = places.map(() => 7),
      probabilityReady = 0,
      nowPct = 14,
    }: {
      today?: typeof dry;
      isStuck?: boolean;
      endsPct?: number[];
      probabilityReady?: number;
      nowPct?: number;
    } = {},
  ) => {
    const reaches = likelyDays.map((days) => reach(days, days, days));
    const expected = likelyDays.map((days): Ready => {
      if (days === null) return { kind: 'too-damp', driestPct: 12 };
      const likely = onDay(days).slice(0, 10);
      return { kind: 'likely', when: { likely, from: likely, to: likely } };
    });
    const forecast = ahead(nowPct, reaches, { endsPct, probabilityReady });
    return bestOf(facts({ places }), forecast, expected, today, isStuck);
  };

  test('where it is ready first', () => {
    expect(best([100, 40, 60], [shed, shop, room])).toBe(shop.placeId);
    expect(best([100, 60, 40], [shed, shop, room])).toBe(room.placeId);
    expect(best([null, 60, null], [shed, shop, room])).toBe(shop.placeId);
  });

  // A week: common practice, no source.
  test('only if that gains a week or more', () => {
    expect(best([47, 40], [shed, shop])).toBe(shop.placeId);
    expect(best([46, 40], [shed, shop])).toBeNull();
    expect(best([null, null], [shed, shop])).toBeNull();
  });

  test('nowhere, where it is as likely ready now as not', () => {
    expect(best([100, 40], [shed, shop], { probabilityReady: 0.5 })).toBeNull();
    expect(best([100, 40], [shed, shop], { probabilityReady: 0.49 })).toBe(shop.placeId);
  });

  test('into no heated room while it may check there, and nowhere if it is to dry where it is first', () => {
    expect(best([100, 40, 20], [shed, shop, room], { today: wetInside })).toBe(shop.placeId);
    expect(best([null, 40, 20], [shed, shop, room], { today: wetInside })).toBeNull();
    expect(best([100, 20], [shed, room])).toBe(room.placeId);
  });

  // 2 points: common practice, no source.
  test('to no place that makes it far too dry, unless it is stuck where it is', () => {
    expect(best([100, 40], [shed, room], { endsPct: [7, 3.9] })).toBeNull();
    expect(best([100, 40], [shed, room], { endsPct: [7, 4] })).toBe(room.placeId);
    expect(best([null, 40], [shed, room], { endsPct: [12, 3.9], isStuck: true })).toBe(room.placeId);
    expect(best([null, 40], [shed, room], { endsPct: [12, 7], isStuck: true })).toBe(room.placeId);
  });

  test('of a board that is too dry now, anywhere that it takes up moisture', () => {
    expect(best([100, 40], [room, shed], { endsPct: [5, 7], nowPct: 3.5 })).toBe(shed.placeId);
  });
});
