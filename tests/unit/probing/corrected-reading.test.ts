import { expect, test } from 'vitest';
import { correctedIn, meterOf } from '../../../shared-core/probing/readings/corrected-reading.ts';
import type { MeterFacts } from '../../../shared-core/probing/readings/evidence.ts';
import { evidence, reading, SCALE } from './a-board.ts';

const meter: MeterFacts = { scale: SCALE, range: { min: 6, max: 40 } };
const other: MeterFacts = { scale: { kind: 'usual' }, range: null };
const board = evidence([], { meters: { 1: meter, 2: other } });
const by = (meterProfileId: number | null) => reading(1, 'shell', 12, { meterProfileId });

test('a reading is corrected by the profile of the meter that took it; without one, as typed values are', () => {
  expect(meterOf(by(1), board)).toBe(meter);
  expect(meterOf(by(2), board)).toBe(other);
  for (const unknown of [null, 3]) expect(meterOf(by(unknown), board)).toBe(board.typedBasis);
});

test('what a check found the meter to be off by is taken from the reading', () => {
  const off = { ...board, meters: { 1: { ...meter, meterOff: 0.5 } } };
  expect(correctedIn(by(1), board).mcPct).toBeCloseTo(12, 6);
  expect(correctedIn(by(1), off).mcPct).toBeCloseTo(11.5, 6);
});
