/** Which backups are kept. The numbers are ours: common practice, no source. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BackupReason,
  backupReasons,
  backupsToKeep,
  type DatedBackup,
  MOST_ONLY_COPIES,
  onlyCopies,
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

test('of several rounds in a day all stay that day, and the first and the last later', () => {
  const day = '2026-11-26';
  expect(rotated([day, day, day, day], 'round').map(({ number }) => number)).toEqual([4, 3, 2, 1]);
  const next = rotated([day, day, day, day, '2026-11-27', '2026-11-28'], 'round');
  expect(next.map(({ number }) => number)).toEqual([6, 5, 4, 1]);
});

test('a clock that always says the same day does not fill the disk', () => {
  expect(rotated(Array.from({ length: 500 }, () => '1970-01-01'))).toHaveLength(25);
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
    expect(after.filter(({ day }) => day > '2026')).toHaveLength(after.length - 3);
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

test('whatever the days: the newest stays, and no more than 62 do', () => {
  fc.assert(
    fc.property(anyBackups, (backups) => {
      const kept = backupsToKeep(backups);
      expect(kept.has(backups.at(-1)!)).toBe(true);
      expect(kept.size).toBeLessThanOrEqual(24 + 2 * 7 + 4 + 12 + 2 + 3 + 3);
    }),
  );
});

test('whatever the days: one more backup deletes, of the first and last of days, 5 at most', () => {
  fc.assert(
    fc.property(anyBackups, fc.integer({ min: -20_000, max: 20_000 }), (backups, days) => {
      const kept = [...backupsToKeep(backups)];
      const more: DatedBackup = { number: 1000, day: dayAfter('2026-11-26', days), why: 'day' };
      const after = backupsToKeep([...kept, more]);
      const inTurn = kept.filter(({ why: reason }) => !['migration', 'restore', 'undo'].includes(reason));
      const isFirstOrLast = ({ day, number }: DatedBackup): boolean => {
        const numbers = inTurn.filter((each) => each.day === day).map((each) => each.number);
        return [Math.min(...numbers), Math.max(...numbers)].includes(number);
      };
      const deleted = inTurn.filter((each) => !after.has(each) && isFirstOrLast(each));
      expect(deleted.length).toBeLessThanOrEqual(5);
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

/** How often a yard is backed up on each day of two years: days off, a usual day, a day of many rounds. */
const twoYears = fc.array(
  fc.oneof(
    { arbitrary: fc.constant(0), weight: 3 },
    { arbitrary: fc.integer({ min: 1, max: 3 }), weight: 5 },
    { arbitrary: fc.integer({ min: 4, max: 12 }), weight: 1 },
  ),
  { minLength: 730, maxLength: 730 },
);

test('over two years, whenever it is looked: all of today, first and last of 7 days, last of 4 weeks and 12 months', () => {
  /** The last of each stretch of time, the newest stretch first. */
  const lasts = (all: readonly DatedBackup[], most: number, stretchOf: (day: string) => string) => {
    const byStretch = new Map(all.map((each) => [stretchOf(each.day), each]));
    return [...byStretch.values()].slice(-most);
  };
  const monday = (day: string): string => dayAfter(day, -((new Date(day).getUTCDay() + 6) % 7));
  fc.assert(
    fc.property(twoYears, (calendar) => {
      const made: DatedBackup[] = [];
      let kept = new Set<DatedBackup>();
      for (const [index, times] of calendar.entries()) {
        const day = dayAfter('2024-11-27', index);
        for (let time = 0; time < times; time++) {
          made.push({ number: made.length + 1, day, why: time === 0 ? 'day' : 'round' });
          kept = backupsToKeep([...kept, made.at(-1)!]);
        }
        if (times === 0) continue;
        const lastOfDays = lasts(made, 7, (each) => each);
        const firstOfDays = lastOfDays.map((last) => made.find((each) => each.day === last.day)!);
        const promised = [
          ...made.slice(-times),
          ...lastOfDays,
          ...firstOfDays,
          ...lasts(made, 4, monday),
          ...lasts(made, 12, (each) => each.slice(0, 7)),
        ];
        expect(promised.filter((each) => !kept.has(each))).toEqual([]);
        expect(kept.size).toBeLessThanOrEqual(times + 2 * 7 + 4 + 12 + 1);
      }
    }),
    { numRuns: 10 },
  );
});

/** A backup with the readings that it has. */
interface Filled extends DatedBackup {
  readings: ReadonlySet<number>;
}
const isElsewhere = (backup: Filled, others: readonly Filled[]): boolean =>
  [...backup.readings].every((reading) => others.some(({ readings }) => readings.has(reading)));

/** What happens to a yard: readings, backups, days that pass, an older backup that is restored. */
const lifeOfYard = fc.array(
  fc.oneof(
    { arbitrary: fc.constant('read' as const), weight: 4 },
    { arbitrary: fc.constantFrom('day' as const, 'round' as const), weight: 6 },
    { arbitrary: fc.constant('nextDay' as const), weight: 6 },
    { arbitrary: fc.record({ restored: fc.nat() }), weight: 1 },
  ),
  { minLength: 50, maxLength: 300 },
);

test('whatever is restored: no reading that was backed up goes from all backups and the yard', () => {
  fc.assert(
    fc.property(lifeOfYard, (life) => {
      let yard: ReadonlySet<number> = new Set();
      let kept: Filled[] = [];
      let made = 0;
      let days = 0;
      const backedUp = new Set<number>();
      const backUp = (why: BackupReason) => {
        const all = [...kept, { number: ++made, day: dayAfter('2026-01-01', days), why, readings: yard }];
        for (const reading of yard) backedUp.add(reading);
        const only = onlyCopies(all, isElsewhere);
        if (only.length === MOST_ONLY_COPIES) return fc.pre(false);
        kept = [...new Set([...backupsToKeep(all), ...only])];
      };
      for (const [index, event] of life.entries()) {
        if (event === 'read') yard = new Set([...yard, index]);
        else if (event === 'nextDay') days++;
        else if (typeof event === 'string') backUp(event);
        else {
          const source = kept[event.restored % Math.max(1, kept.length)];
          backUp('restore');
          if (source) yard = source.readings;
        }
        const there = new Set([...yard, ...kept.flatMap(({ readings }) => [...readings])]);
        expect([...backedUp].filter((reading) => !there.has(reading))).toEqual([]);
      }
    }),
    { numRuns: 50 },
  );
});

test('of backups that each have readings of their own, no more than 20 stay for that, the newest', () => {
  const all = everyDay('2020-01-01', 900).map(
    (day, index): Filled => ({ number: index + 1, day, why: 'restore', readings: new Set([index]) }),
  );
  const only = onlyCopies(all, isElsewhere);
  expect(only).toHaveLength(20);
  expect(Math.min(...only.map(({ number }) => number))).toBe(878);
});
