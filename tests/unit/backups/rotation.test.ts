/** Which backups are kept. The numbers are ours: common practice, no source. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BackupReason,
  backupReasons,
  backupsToKeep,
  type DatedBackup,
} from '../../../shared-core/backups/rotation.ts';
import { DAY_MS } from '../../../shared-core/time.ts';

const dayAfter = (start: string, days: number): string =>
  new Date(Date.parse(start) + days * DAY_MS).toISOString().slice(0, 10);

/** Backups made one after another on these days, each rotated when it is made, as the app does. */
function rotated(days: readonly string[], why: BackupReason = 'day'): DatedBackup[] {
  let kept: DatedBackup[] = [];
  for (const [index, day] of days.entries()) {
    kept = [...backupsToKeep([...kept, { number: index + 1, day, why }])];
  }
  return kept.sort((a, b) => b.number - a.number);
}
const everyDay = (start: string, days: number): string[] =>
  Array.from({ length: days }, (_, index) => dayAfter(start, index));

test('after two years of opening Pintally every day: 7 days, 4 Sundays, 12 ends of a month', () => {
  // 2026-11-26 is a Thursday.
  const days = rotated(everyDay('2024-11-27', 730)).map(({ day }) => day);
  expect(days).toEqual([
    '2026-11-26',
    '2026-11-25',
    '2026-11-24',
    '2026-11-23',
    '2026-11-22',
    '2026-11-21',
    '2026-11-20',
    '2026-11-15',
    '2026-11-08',
    '2026-10-31',
    '2026-09-30',
    '2026-08-31',
    '2026-07-31',
    '2026-06-30',
    '2026-05-31',
    '2026-04-30',
    '2026-03-31',
    '2026-02-28',
    '2026-01-31',
    '2025-12-31',
  ]);
});

test('whoever probes once a month has a year of it', () => {
  const days = Array.from({ length: 30 }, (_, month) => dayAfter('2024-01-15', month * 31));
  expect(rotated(days, 'round').map(({ day }) => day)).toEqual(days.slice(-12).reverse());
});

test('of several rounds in a day the newest stays, and the one before it while it is the second newest', () => {
  const day = '2026-11-26';
  expect(rotated([day, day, day, day], 'round').map(({ number }) => number)).toEqual([4, 3]);
});

test('of those made before a migration and before a restore the 3 newest stay, however old', () => {
  const before = (why: BackupReason, from: number): DatedBackup[] =>
    Array.from({ length: 5 }, (_, index) => ({ number: from + index, day: '2020-01-01', why }));
  const all = [
    ...before('migration', 1),
    ...before('restore', 6),
    ...everyDay('2026-01-01', 40).map((day, index) => ({ number: 11 + index, day, why: 'day' as const })),
  ];
  const kept = [...backupsToKeep(all)].filter(({ why }) => why !== 'day').map(({ number }) => number);
  expect(kept.sort((a, b) => a - b)).toEqual([3, 4, 5, 8, 9, 10]);
});

describe('a clock that is wrong', () => {
  const year = everyDay('2025-11-26', 365);

  test('set ten years ahead for a day, costs one day, one week and one month', () => {
    const before = rotated(year);
    const after = rotated([...year, '2036-05-05']);
    const lost = before.filter((each) => !after.some(({ number }) => number === each.number));
    expect(lost.map(({ day }) => day)).toEqual(['2026-11-19', '2026-11-08', '2025-12-31']);
    expect(after[0]?.day).toBe('2036-05-05');
  });

  test('set back to 1970, as by a flat battery, keeps what is made then', () => {
    const after = rotated([...year, '1970-01-01', '1970-01-01', '1970-01-01']);
    expect(after[0]).toMatchObject({ day: '1970-01-01', number: 368 });
    expect(after.filter(({ day }) => day > '2026')).toHaveLength(after.length - 2);
  });
});

const anyBackups = fc
  .array(
    fc.record({
      days: fc.integer({ min: -20_000, max: 20_000 }),
      why: fc.constantFrom(...backupReasons),
    }),
    { minLength: 1, maxLength: 80 },
  )
  .map((all) =>
    all.map(
      ({ days, why }, index): DatedBackup => ({
        number: index + 1,
        day: dayAfter('2026-11-26', days),
        why,
      }),
    ),
  );

test('whatever the days: the newest stays, and no more than 31 do', () => {
  fc.assert(
    fc.property(anyBackups, (backups) => {
      const kept = backupsToKeep(backups);
      expect(kept.has(backups.at(-1)!)).toBe(true);
      expect(kept.size).toBeLessThanOrEqual(7 + 4 + 12 + 2 + 3 + 3);
    }),
  );
});

test('whatever the days: one more backup deletes 4 at most', () => {
  fc.assert(
    fc.property(anyBackups, fc.integer({ min: -20_000, max: 20_000 }), (backups, days) => {
      const kept = [...backupsToKeep(backups)];
      const more: DatedBackup = { number: 1000, day: dayAfter('2026-11-26', days), why: 'day' };
      const after = backupsToKeep([...kept, more]);
      expect(kept.filter((each) => !after.has(each)).length).toBeLessThanOrEqual(4);
    }),
  );
});

test('whatever the days: what is kept is kept again, in any order', () => {
  fc.assert(
    fc.property(anyBackups, (backups) => {
      const kept = backupsToKeep(backups);
      expect(backupsToKeep([...kept].reverse())).toEqual(kept);
    }),
  );
});
