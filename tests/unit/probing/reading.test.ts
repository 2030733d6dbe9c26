/** One raw value with everything that is known of it. */
import { describe, expect, test } from 'vitest';
import {
  depthFromSchema,
  depthSchema,
  isOnAMeter,
  probeTempSchema,
  readingSchema,
  spotSchema,
  suspicionRuleSchema,
  suspicionSchema,
  takenHowSchema,
} from '../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../shared-core/words/message.ts';
import { averages, reading } from './a-board.ts';

test('a reading is saved as it was taken', () => {
  const [average] = averages([12]);
  const all = [
    reading(1, 'shell', 12),
    average!,
    reading(2, 'core', 1e8, { unit: 'ohm', spotIndex: 0, movedTo: { boardId: 2, code: 'OAK-2' } }),
  ];
  for (const each of all) expect(readingSchema.parse(each)).toEqual(each);
  expect(readingSchema.safeParse({ ...all[0], spotIndex: -1 }).success).toBe(false);
  expect(readingSchema.safeParse({ ...all[0], movedTo: {} }).success).toBe(false);
});

test('what is known of where, how deep and how it was taken', () => {
  expect(depthSchema.options).toEqual(['shell', 'average', 'core']);
  expect(takenHowSchema.options).toEqual(['settled', 'at-once', 'typed']);
  expect(depthFromSchema.options).toEqual(['person', 'pins', 'plan']);
  expect(probeTempSchema.parse({ name: 'probe', tempC: 18 })).toEqual({ name: 'probe', tempC: 18 });
});

describe('a spot', () => {
  const spot = { depth: 'shell', depthMm: 5, fromEndMm: 300, face: 'face' } as const;
  const isSpot = (changes: object) => spotSchema.safeParse({ ...spot, ...changes }).success;

  test.each(['face', 'fresh-cut', 'fresh-rip', 'fresh-split', 'end-grain'])('may be in the %s', (face) => {
    expect(isSpot({ face })).toBe(true);
  });

  test('is within half a meter of thickness and 20 m of an end, or not known', () => {
    expect([0, 0.1, 500, 501, null].map((depthMm) => isSpot({ depthMm }))).toEqual([
      false,
      true,
      true,
      false,
      true,
    ]);
    expect([-1, 0, 20_000, 20_001, null].map((fromEndMm) => isSpot({ fromEndMm }))).toEqual([
      false,
      true,
      true,
      false,
      true,
    ]);
    expect([true, false, undefined].map((isAlongUnknown) => isSpot({ isAlongUnknown }))).toEqual([
      true,
      false,
      true,
    ]);
  });
});

// Common practice, no source.
test('no meter shows less than a thousandth', () => {
  expect([0, 0.0009, 0.001, -0.001, 12].map(isOnAMeter)).toEqual([false, false, true, true, true]);
});

test('each rule that speaks against a reading has its name once, and three weights', () => {
  const { options } = suspicionRuleSchema;
  expect(new Set(options).size).toBe(30);
  expect(options.every((rule) => /^[a-z]+(-[a-z]+)*$/.test(rule))).toBe(true);
  const of = (severity: string) =>
    suspicionSchema.safeParse({
      rule: 'damaged',
      severity,
      why: message('suspicion.damaged'),
      whatToDo: message('suspicion.damaged'),
    }).success;
  expect(['refused', 'questionable', 'note', 'doubt', ''].map(of)).toEqual([true, true, true, false, false]);
});
