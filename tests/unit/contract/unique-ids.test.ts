import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { requests } from '../../../shared-core/contract/requests.ts';

const isTaken = (name: 'labels.contents' | 'labels.pdf', input: object): boolean =>
  requests[name].input.safeParse(input).success;

describe('a list that names a board twice', () => {
  test('is no list of labels', () => {
    expect(isTaken('labels.contents', { boardIds: [1, 2] })).toBe(true);
    expect(isTaken('labels.contents', { boardIds: [1, 2, 1] })).toBe(false);
    const sheet = {
      paperId: 'sheet',
      used: 0,
      region: { locale: 'en-US', timeZone: 'America/Chicago', units: 'metric' },
    };
    expect(isTaken('labels.pdf', { boardIds: [1, 2], work: randomUUID(), ...sheet })).toBe(true);
    expect(isTaken('labels.pdf', { boardIds: [1, 1], work: randomUUID(), ...sheet })).toBe(false);
  });

  test('is moved once', () => {
    const input = { boardIds: [2, 1, 2], placeId: 1, since: '2026-05-20T08:00:00Z', work: randomUUID() };
    expect(requests['boards.move'].input.parse(input).boardIds).toEqual([2, 1]);
  });

  test('is edited once', () => {
    const [one, other] = [
      { id: 1, basedOn: 1 },
      { id: 2, basedOn: 1 },
    ];
    const input = { boards: [one, other, one], changed: { log: 'A' }, work: randomUUID() };
    expect(requests['boards.editTogether'].input.parse(input).boards).toEqual([one, other]);
  });
});
