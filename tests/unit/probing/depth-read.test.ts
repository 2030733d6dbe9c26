/** What a reading tells by how deep it was. */
import { describe, expect, test } from 'vitest';
import {
  areDepthsUnknown,
  depthRead,
  isAlongUnknown,
  isDepthUnknown,
  reachesOtherFace,
} from '../../../shared-core/probing/readings/depth-read.ts';
import type { Depth, Reading } from '../../../shared-core/probing/readings/reading.ts';
import { reading } from './a-board.ts';

const at = (
  depth: Depth,
  depthMm: number | null,
  more: Partial<Reading> = {},
  spot: Partial<Reading['spot']> = {},
) => reading(1, depth, 12, { ...more, spot: { depth, depthMm, fromEndMm: 1000, face: 'face', ...spot } });

// A quarter tells the average, a fifth to a third about it (Dry Kiln Operator's Manual, from memory); the rest is common
// practice, no source. A board of 100 mm, so that a depth is its percentage.
describe('a reading in a board of 100 mm', () => {
  const read = (depth: Depth, depthMm: number | null) => depthRead(at(depth, depthMm), 100);

  test.each([
    [1, 25, 'shell'],
    [26, 34, 'average'],
    [35, 65, 'core'],
    [66, 74, 'average'],
    [75, 99, 'shell'],
  ] as const)('of the shell, %d to %d mm deep, tells the %s', (from, to, depth) => {
    expect([read('shell', from), read('shell', to)]).toEqual([depth, depth]);
  });

  test.each([
    [1, 11, 'shell'],
    [12, 34, 'average'],
    [35, 65, 'core'],
  ] as const)('of the average, %d to %d mm deep, tells the %s', (from, to, depth) => {
    expect([read('average', from), read('average', to)]).toEqual([depth, depth]);
  });

  test.each([
    [1, 19, 'shell'],
    [20, 34, 'average'],
    [35, 65, 'core'],
    [66, 80, 'average'],
  ] as const)('of the core, %d to %d mm deep, tells the %s', (from, to, depth) => {
    expect([read('core', from), read('core', to)]).toEqual([depth, depth]);
  });

  test('tells what it is for where its depth is unknown or impossible', () => {
    expect(read('core', null)).toBe('core');
    expect(depthRead(at('core', 5, { depthFrom: 'plan' }), 100)).toBe('core');
    expect(read('core', 101)).toBe('core');
    expect(read('core', 100)).toBe('shell');
  });

  test('tells the core in a fresh crosscut, whatever its depth below the face', () => {
    expect(depthRead(at('core', 5, {}, { face: 'fresh-cut' }), 100)).toBe('core');
    expect(depthRead(at('core', 5, {}, { face: 'fresh-rip' }), 100)).toBe('shell');
  });
});

test('the depths of several readings are unknown only where every one is', () => {
  const [known, unknown] = [at('shell', 5), at('shell', null)];
  expect([isDepthUnknown(known), isDepthUnknown(unknown)]).toEqual([false, true]);
  expect([[], [known], [known, unknown], [unknown, unknown]].map(areDepthsUnknown)).toEqual([
    false,
    false,
    false,
    true,
  ]);
});

test('where along the board a reading was is unknown where nobody gave that, or the depth', () => {
  expect(isAlongUnknown(at('shell', 5))).toBe(false);
  expect(isAlongUnknown(at('shell', null))).toBe(true);
  expect(isAlongUnknown(at('shell', 5, {}, { isAlongUnknown: true }))).toBe(true);
});

// Nine tenths: common practice, no source.
test('pins deeper than nine tenths of a board reach its other face', () => {
  expect([90, 90.1].map((depthMm) => reachesOtherFace(depthMm, 100))).toEqual([false, true]);
});
