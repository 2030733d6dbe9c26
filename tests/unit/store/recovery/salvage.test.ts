import { randomUUID } from 'node:crypto';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeAll, describe, expect, test } from 'vitest';
import { salvage } from '../../../../electron/store/salvage/salvage.ts';
import { readWal } from '../../../../electron/store/wal-frames.ts';
import { openYard } from '../../../../electron/store/yard.ts';
import { copyOfLayout } from '../layout-copy.ts';
import { copyOf, killedYard, seeded } from './killed-yard.ts';

const READINGS = 1200;
const PAGE = 4096;
let killed: string;
/** Everything is in the file itself. */
let merged: string;
beforeAll(async () => {
  killed = await killedYard({ readings: READINGS, merged: READINGS - 20 });
  merged = copyOf(killed);
  openYard(merged).close();
});

/** Saves what can be read, and opens the new file as Pintally does. */
function saved(file: string) {
  const before = readFileSync(file);
  const target = join(file, '..', 'new.sqlite');
  const report = salvage(file, target);
  expect(readFileSync(file).equals(before)).toBe(true);
  const yard = openYard(target);
  yard.close();
  const db = new Database(target, { readonly: true });
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(db.pragma('foreign_key_check')).toEqual([]);
  const all = (sql: string) => db.prepare(sql).all();
  const rows = { readings: all(READING), boards: all(BOARD), stacks: all('SELECT id, name FROM stack') };
  db.close();
  const kind = (name: string) => report.kinds.find(({ kind }) => kind === name)!;
  return { ...rows, report, kind, yard: yard.uuid };
}
const READING = 'SELECT id, uuid, round_id, board_id, raw, checksum FROM reading ORDER BY id';
const BOARD = 'SELECT id, uuid, code, note FROM board ORDER BY id';

function sound(sql: string): unknown[] {
  const db = new Database(merged, { readonly: true });
  try {
    return db.prepare(sql).all();
  } finally {
    db.close();
  }
}

function rootOf(table: string): number {
  return (
    sound(`SELECT rootpage AS page FROM sqlite_schema WHERE name = '${table}'`) as { page: number }[]
  )[0]!.page;
}

function overwritten(pages: readonly number[]): string {
  const file = copyOf(merged);
  const bytes = readFileSync(file);
  for (const page of pages) bytes.fill(0xa5, (page - 1) * PAGE, page * PAGE);
  writeFileSync(file, bytes);
  return file;
}

describe('what can be read of a yard file', () => {
  test('is everything where nothing is damaged, the WAL included', () => {
    const { readings, boards, kind } = saved(copyOf(killed));
    expect(readings).toEqual(sound(READING));
    expect(readings).toHaveLength(READINGS);
    expect(boards).toEqual(sound(BOARD));
    expect(kind('readings')).toEqual({ kind: 'readings', saved: READINGS, lost: 0 });
  });

  test('of a file cut to its first pages is said to lack every reading that it was known to have', () => {
    const file = copyOf(merged);
    writeFileSync(file, readFileSync(file).subarray(0, rootOf('reading') * PAGE - PAGE));
    const act = { yard: randomUUID(), uuid: randomUUID(), id: 7, at: '2026-02-01T10:00:00.000Z' };
    writeFileSync(`${file}-newest`, JSON.stringify({ ...act, reading: READINGS }));
    const { kind } = saved(file);
    const { saved: found, lost } = kind('readings');
    expect([found < READINGS, found + lost]).toEqual([true, READINGS]);
  });

  test('is reported by what a person looks for first', () => {
    const { report } = saved(copyOf(killed));
    expect(report.kinds.map(({ kind }) => kind)).toEqual([
      'stacks',
      'boards',
      'readings',
      'rounds',
      'places',
      'other',
    ]);
  });

  test('is every reading where the top of their tree is torn', () => {
    const { readings } = saved(overwritten([rootOf('reading')]));
    expect(readings).toEqual(sound(READING));
  });

  test('is every reading and board where the first page is torn', () => {
    const { readings, boards } = saved(overwritten([1]));
    expect(readings).toEqual(sound(READING));
    expect(boards).toEqual(sound(BOARD));
  });

  test('is every reading where the boards are lost: they get boards of the right stack', () => {
    const { readings, boards, stacks, report } = saved(
      overwritten(
        (sound("SELECT pageno FROM dbstat WHERE name = 'board'") as { pageno: number }[]).map(
          (p) => p.pageno,
        ),
      ),
    );
    expect(readings).toEqual(sound(READING));
    expect(boards).toHaveLength(60);
    expect(stacks).toEqual(sound('SELECT id, name FROM stack'));
    expect(report.recovered).toContain('RECOVERED-1');
  });

  test('is told beside what is lost: the index still names the readings of a torn page', () => {
    const pages = sound("SELECT pageno FROM dbstat WHERE name = 'reading' AND pagetype = 'leaf'") as {
      pageno: number;
    }[];
    const { readings, kind } = saved(overwritten([pages[3]!.pageno]));
    expect(readings.length).toBeLessThan(READINGS);
    expect(readings.length).toBeGreaterThan(READINGS - 40);
    expect(kind('readings')).toEqual({
      kind: 'readings',
      saved: readings.length,
      lost: READINGS - readings.length,
    });
  });

  test('holds the later commits of a WAL with a bad page, which SQLite would drop', () => {
    const file = copyOf(killed);
    const log = readFileSync(`${file}-wal`);
    const { offset } = readWal(log)!.frames[4]!;
    log.fill(0xa5, offset, offset + PAGE);
    writeFileSync(`${file}-wal`, log);
    expect(saved(file).readings).toEqual(sound(READING));
  });

  test('is all but what is on the pages themselves, wherever pages are overwritten', () => {
    const random = seeded(7);
    const count = statSync(merged).size / PAGE;
    for (let n = 0; n < 8; n++) {
      const pages = [1, 2, 3].map(() => 1 + random(count));
      expect(saved(overwritten(pages)).readings.length, `pages ${pages}`).toBeGreaterThan(READINGS - 150);
    }
  });

  test.each([1, 5, 9, 10, 11])('of layout %i is brought to the newest one', (layout) => {
    const file = copyOfLayout(layout);
    const before = new Database(file);
    const readings = before.prepare('SELECT id, raw FROM reading ORDER BY id').all();
    before.close();
    expect(saved(file).readings).toMatchObject(readings as object[]);
    expect(readings.length).toBeGreaterThan(0);
  });
});
