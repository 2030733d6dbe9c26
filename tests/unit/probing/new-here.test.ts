import { describe, expect, test } from 'vitest';
import { isNewHere } from '../../../shared-core/probing/readings/new-here.ts';

const AT = '2026-05-20T10:00:00Z';
const shed = (since: string) => ({ since, emcPct: 12.5 });
const room = (since: string) => ({ since, emcPct: 7 });

describe('A board is new where it is', () => {
  test('for two months after it came from damper air', () => {
    const movedOn = (day: string) => isNewHere([shed('2025-03-01T10:00:00Z'), room(day)], '2025-03-01', AT);
    expect(movedOn('2026-05-10T10:00:00Z')).toBe(true);
    expect(movedOn('2026-03-22T10:00:00Z')).toBe(true);
    expect(movedOn('2026-03-20T10:00:00Z')).toBe(false);
  });

  test('never where it was sawn, however lately', () => {
    expect(isNewHere([shed('2026-05-10T10:00:00Z')], '2026-05-01', AT)).toBe(false);
  });

  test('perhaps, where nobody knows what it came from, or that was drier', () => {
    const lately = '2026-05-10T10:00:00Z';
    expect(isNewHere([shed(lately)], null, AT)).toBeNull();
    expect(isNewHere([shed(lately)], '2025-03-01', AT)).toBeNull();
    expect(isNewHere([{ since: '2025-03-01T10:00:00Z', emcPct: null }, room(lately)], null, AT)).toBeNull();
    expect(isNewHere([room('2025-03-01T10:00:00Z'), shed(lately)], null, AT)).toBeNull();
  });

  test('perhaps, where the air of where it is now is not known, or as damp as before', () => {
    const lately = '2026-05-10T10:00:00Z';
    const before = shed('2025-03-01T10:00:00Z');
    expect(isNewHere([before, { since: lately, emcPct: null }], null, AT)).toBeNull();
    expect(isNewHere([before, shed(lately)], null, AT)).toBeNull();
  });

  // 60 and 14 days: common practice, no source.
  test('to the last moment of 60 days, and where it was entered within 14 days of sawing', () => {
    const stops = [shed('2025-03-01T10:00:00Z'), room('2026-03-21T10:00:00Z')];
    expect(isNewHere(stops, null, AT)).toBe(true);
    expect(isNewHere(stops, null, '2026-05-20T10:00:00.001Z')).toBe(false);
    expect(isNewHere([shed('2026-05-15T00:00:00Z')], '2026-05-01', AT)).toBe(false);
    expect(isNewHere([shed('2026-05-15T00:00:01Z')], '2026-05-01', AT)).toBeNull();
  });

  test('from the moment of its move, and nowhere before its first', () => {
    expect(isNewHere([shed('2025-03-01T10:00:00Z'), room(AT)], null, AT)).toBe(true);
    expect(isNewHere([shed('2026-05-21T10:00:00Z')], '2026-05-01', AT)).toBeNull();
    expect(isNewHere([], null, AT)).toBeNull();
  });

  test('as it was at the readings: a move after them is none yet', () => {
    const moves = [shed('2025-03-01T10:00:00Z'), room('2026-05-25T10:00:00Z')];
    expect(isNewHere(moves, '2025-03-01', AT)).toBe(false);
  });
});
