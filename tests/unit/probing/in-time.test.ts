import { describe, expect, test } from 'vitest';
import type { Ready } from '../../../shared-core/probing/calls/ready-in.ts';
import { inTime } from '../../../shared-core/probing/plan/in-time.ts';

const today = '2026-11-27';
const likely = (day: string, to: string | null = null): Ready => ({
  kind: 'likely',
  when: { likely: day, from: day, to },
});
const at = (...readies: (Ready | null)[]) => ({
  call: 'keep-drying' as const,
  places: readies.map((ready, index) => ({ placeId: index + 1, ready })),
});
const never: Ready = { kind: 'too-damp', driestPct: 14 };

describe('whether a board is in time', () => {
  test('one that is ready is', () => {
    expect(inTime({ call: 'ready', places: [] }, '2026-12-01', today)).toEqual({ is: 'ready' });
  });
  test('where it is, and whether that is sure', () => {
    const here = at(likely('2027-03-01', '2027-04-10'), likely('2027-01-01'));
    expect(inTime(here, '2027-03-15', today)).toEqual({ is: 'here', on: '2027-03-01', isSure: false });
    expect(inTime(here, '2027-04-10', today)).toEqual({ is: 'here', on: '2027-03-01', isSure: true });
    expect(inTime(at({ kind: 'any-day' }), '2026-12-01', today)).toMatchObject({ is: 'here', on: today });
  });
  test('on that very day, here and elsewhere', () => {
    expect(inTime(at(likely('2027-03-01')), '2027-03-01', today).is).toBe('here');
    expect(inTime(at(never, likely('2027-03-01')), '2027-03-01', today).is).toBe('elsewhere');
    expect(inTime(at({ kind: 'now' }), today, today)).toEqual({ is: 'here', on: today, isSure: false });
    expect(inTime(at(null, { kind: 'now' }), today, today).is).toBe('elsewhere');
  });
  test('only elsewhere: the soonest comes first', () => {
    const board = at(never, likely('2027-02-01'), likely('2027-01-10'), likely('2027-09-01'));
    expect(inTime(board, '2027-03-01', today)).toEqual({
      is: 'elsewhere',
      places: [
        { placeId: 3, on: '2027-01-10' },
        { placeId: 2, on: '2027-02-01' },
      ],
    });
  });
  test('nowhere: when it would be soonest', () => {
    expect(inTime(at(likely('2027-09-01'), likely('2027-05-01')), '2027-03-01', today)).toEqual({
      is: 'late',
      on: '2027-05-01',
      placeId: 2,
    });
    expect(inTime(at(never, null), '2027-03-01', today)).toEqual({ is: 'never' });
  });
  test('of the same day it stays where it is', () => {
    expect(inTime(at(likely('2027-05-01'), likely('2027-05-01')), '2027-03-01', today)).toMatchObject({
      placeId: 1,
    });
  });
  test('without a day that it is needed by, every day is in time', () => {
    expect(inTime(at(likely('2028-05-01')), null, today)).toMatchObject({ is: 'here', isSure: false });
  });
  test('a day that is past is missed by all that is not ready', () => {
    expect(inTime(at({ kind: 'any-day' }), '2026-11-01', today)).toEqual({
      is: 'late',
      on: today,
      placeId: 1,
    });
  });
  test('without a forecast nobody knows', () => {
    expect(inTime({ call: null, places: [] }, '2027-03-01', today)).toEqual({ is: 'unknown' });
    expect(inTime(at(null, null), '2027-03-01', today)).toEqual({ is: 'unknown' });
  });
});
