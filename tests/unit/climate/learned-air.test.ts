import { describe, expect, test } from 'vitest';
import {
  AIR_BETWEEN_BOARDS_SD_PCT,
  type AirEvidence,
  airTold,
  KIND_SHARE,
  learnedAir,
  type UnsureAir,
} from '../../../shared-core/wood/climate/learned-air.ts';

const shed = (placeId: number): UnsureAir => ({ placeId, kind: 'open-shed', sdPct: 1 });
const room: UnsureAir = { placeId: 9, kind: 'heated-room', sdPct: 0.6 };
const places = [shed(1), shed(2), room];
const damper = (placeId: number, boards = 1): AirEvidence => {
  const { offsetPct, precision } = airTold(1.5, 1);
  return { placeId, precision: boards * precision, pull: boards * offsetPct * precision };
};
const two = [damper(1, 2)];

describe('what readings teach of the air of places', () => {
  test('is nothing where nothing was read, nor of a place that is not in the yard', () => {
    expect(learnedAir(1, places, [])).toBeNull();
    expect(learnedAir(5, places, two)).toBeNull();
  });

  test('of two sheds, readings in one narrow and shift the other’s, and its own more', () => {
    const read = learnedAir(1, places, two)!;
    const other = learnedAir(2, places, two)!;
    expect(other.offsetPct).toBeGreaterThan(0.1);
    expect(other.sdPct).toBeLessThan(1);
    expect(read.offsetPct).toBeGreaterThan(other.offsetPct);
    expect(read.sdPct).toBeLessThan(other.sdPct);
  });

  test('says nothing of a place of another kind', () => {
    expect(learnedAir(9, places, two)).toBeNull();
  });

  // Three numbers by hand: variance of the kind and of a place 0.5 each; a board's own 1 - 0.49 + 0.09 = 0.6, and 0.49 of its
  // meter: 1.09 in all.
  test('is a normal hierarchy, checked by hand', () => {
    const { offsetPct, sdPct } = learnedAir(1, places, [damper(1)])!;
    const seen = 0.51 + AIR_BETWEEN_BOARDS_SD_PCT ** 2 + 0.49;
    expect(sdPct ** 2).toBeCloseTo(1 / (1 + 1 / seen), 9);
    expect(offsetPct).toBeCloseTo(1.5 / seen / (1 + 1 / seen), 9);
    const away = learnedAir(2, places, [damper(1)])!;
    const kind = KIND_SHARE / (KIND_SHARE + (1 - KIND_SHARE) + seen);
    expect(away.offsetPct).toBeCloseTo(1.5 * kind, 9);
    expect(away.sdPct ** 2).toBeCloseTo(1 - KIND_SHARE * kind, 9);
  });

  test('however many boards are read, what one meter is wrong by stays', () => {
    // 0.7 of the meter and 1 beforehand: by hand.
    expect(learnedAir(1, places, [damper(1, 1000)])!.sdPct).toBeCloseTo(1 / Math.hypot(1, 1 / 0.7), 2);
  });
});
