import { describe, expect, test } from 'vitest';
import { AIR_SPREADS } from '../../../shared-core/wood/climate/learned-air.ts';
import {
  type Evidence,
  learnedAt,
  toldOf,
  type UnsurePlace,
} from '../../../shared-core/wood/climate/learned-at-places.ts';

const KIND_SHARE = AIR_SPREADS.kindShare;
const shed = (placeId: number): UnsurePlace => ({ placeId, kind: 'open-shed', sd: 1 });
const room: UnsurePlace = { placeId: 9, kind: 'heated-room', sd: 0.6 };
const places = [shed(1), shed(2), room];
const damper = (placeId: number, boards = 1): Evidence => {
  const { offset, precision } = toldOf(1.5, 1, AIR_SPREADS);
  return { placeId, precision: boards * precision, pull: boards * offset * precision };
};
const learned = (placeId: number, all: readonly UnsurePlace[], told: readonly Evidence[]) =>
  learnedAt(placeId, all, told, AIR_SPREADS);
const two = [damper(1, 2)];

describe('what readings teach of places', () => {
  test('is nothing where nothing was read, nor of a place that is not in the yard', () => {
    expect(learned(1, places, [])).toBeNull();
    expect(learned(5, places, two)).toBeNull();
  });

  test('of two sheds, readings in one narrow and shift the other’s, and its own more', () => {
    const read = learned(1, places, two)!;
    const other = learned(2, places, two)!;
    expect(other.offset).toBeGreaterThan(0.1);
    expect(other.sd).toBeLessThan(1);
    expect(read.offset).toBeGreaterThan(other.offset);
    expect(read.sd).toBeLessThan(other.sd);
  });

  test('says nothing of a place of another kind', () => {
    expect(learned(9, places, two)).toBeNull();
  });

  // Three numbers by hand: variance of the kind and of a place 0.5 each; a board's own 1 - 0.49 + 0.09 = 0.6, and 0.49 of its
  // meter: 1.09 in all.
  test('is a normal hierarchy, checked by hand', () => {
    const { offset, sd } = learned(1, places, [damper(1)])!;
    const seen = 0.51 + AIR_SPREADS.betweenBoards ** 2 + 0.49;
    expect(sd ** 2).toBeCloseTo(1 / (1 + 1 / seen), 9);
    expect(offset).toBeCloseTo(1.5 / seen / (1 + 1 / seen), 9);
    const away = learned(2, places, [damper(1)])!;
    const kind = KIND_SHARE / (KIND_SHARE + (1 - KIND_SHARE) + seen);
    expect(away.offset).toBeCloseTo(1.5 * kind, 9);
    expect(away.sd ** 2).toBeCloseTo(1 - KIND_SHARE * kind, 9);
  });

  test('however many boards are read, what one meter is wrong by stays', () => {
    // 0.7 of the meter and 1 beforehand: by hand.
    expect(learned(1, places, [damper(1, 1000)])!.sd).toBeCloseTo(1 / Math.hypot(1, 1 / 0.7), 2);
  });
});
