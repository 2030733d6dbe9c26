/** Every backup that is made has a name that is listed and rotated, whatever the clock or a file in its folder says. */
import { expect, test } from 'vitest';
import { backupFileName, numberAfter, readBackupName } from '../../../electron/store/backup-name.ts';
import { backupsToKeep } from '../../../shared-core/backups/rotation.ts';

const backup = { at: '2026-11-26T08:00:00.000Z', why: 'day', number: 7, yardId: 'abcdef01' } as const;

test('a name says what it was made of', () => {
  const name = backupFileName(backup);
  expect(name).toBe('pintally-2026-11-26T08-00-00Z-day-00007-abcdef01.sqlite');
  expect(readBackupName(name)).toEqual(backup);
});

test('numbers count up to the last that a name can have, and stay there', () => {
  expect([numberAfter([]), numberAfter([3, 5])]).toEqual([1, 6]);
  for (const number of [99_999_998, 99_999_999, 999_999_999, Number.MAX_VALUE]) {
    expect(readBackupName(backupFileName({ ...backup, number: numberAfter([number]) }))).not.toBeNull();
  }
});

test('a file with a number that no backup can have is none', () => {
  expect(readBackupName('pintally-2026-11-26T08-00-00Z-day-999999999-abcdef01.sqlite')).toBeNull();
});

test.each(['+010006-01-01T00:00:00.000Z', '9999-12-31T23:59:59.000Z', '-000044-03-15T12:00:00.000Z'])(
  'a clock that says %s makes a backup that is listed',
  (at) => {
    const read = readBackupName(backupFileName({ ...backup, at }));
    expect(read).toMatchObject({ number: 7, yardId: 'abcdef01' });
    const day = new Date(read!.at).toLocaleDateString('sv-SE', { timeZone: 'Pacific/Kiritimati' });
    expect(backupsToKeep([{ ...backup, day }]).size).toBe(1);
  },
);

test('backups with the last number go by their days', () => {
  const days = ['2026-01-01', '2026-01-02', '2026-01-03'];
  const made = days.map((day) => ({ ...backup, why: 'migration' as const, number: 99_999_999, day }));
  const many = [...made, ...made.slice(0, 2).map((each) => ({ ...each, number: 1 }))];
  expect([...backupsToKeep(many)].map(({ day }) => day)).toContain('2026-01-03');
});
