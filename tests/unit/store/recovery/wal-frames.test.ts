import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { beforeAll, describe, expect, test } from 'vitest';
import { readWal } from '../../../../electron/store/wal-frames.ts';
import { repairWal } from '../../../../electron/store/wal-repair.ts';
import { copyOf, killedYard, seeded } from './killed-yard.ts';

const READINGS = 60;
const MERGED = 20;
let killed: string;
beforeAll(async () => {
  killed = await killedYard({ readings: READINGS, merged: MERGED });
});

function readingsOf(file: string): number {
  const db = new Database(file);
  try {
    return Number(db.prepare('SELECT count(*) FROM reading').pluck().get());
  } finally {
    db.close();
  }
}

const logOf = (file: string): Buffer => readFileSync(`${file}-wal`);

function flip(file: string, offset: number, mask: number): void {
  const log = logOf(file);
  log.writeUInt8(log.readUInt8(offset) ^ mask, offset);
  writeFileSync(`${file}-wal`, log);
}

describe('the WAL of a yard whose process was killed', () => {
  test('is read as SQLite reads it: every reading is a commit of its own', () => {
    const wal = readWal(logOf(killed))!;
    expect(wal.flipped).toEqual([]);
    expect(wal.later).toEqual([]);
    expect(wal.frames.filter(({ pagesAfterCommit }) => pagesAfterCommit > 0)).toHaveLength(READINGS - MERGED);
    expect(readingsOf(copyOf(killed))).toBe(READINGS);
  });

  // On the main branch of November 26, all of these were opened with fewer readings and without a word.
  test('with one bit flipped anywhere is repaired, or refused before SQLite can overwrite it', () => {
    const random = seeded(25);
    const { length } = logOf(killed);
    const outcomes = { repaired: 0, cut: 0, sound: 0 };
    for (let n = 0; n < 60; n++) {
      const file = copyOf(killed);
      const offset = random(length);
      flip(file, offset, 1 << random(8));
      const state = repairWal(file);
      outcomes[state.kind]++;
      if (state.kind === 'cut') continue;
      expect(logOf(file).equals(logOf(killed)), `bit in byte ${offset}`).toBe(true);
      expect(readingsOf(file)).toBe(READINGS);
    }
    expect(outcomes.sound).toBe(0);
    expect(outcomes.repaired).toBeGreaterThan(40);
  });

  test('is saved beside as it was found before it is repaired', () => {
    const file = copyOf(killed);
    flip(file, 32 + 24 + 4096 + 24 + 1000, 1);
    const damaged = logOf(file);
    const state = repairWal(file);
    expect(state).toMatchObject({ kind: 'repaired', commits: READINGS - MERGED });
    expect(readFileSync((state as { copy: string }).copy).equals(damaged)).toBe(true);
    expect(readdirSync(dirname(file))).toHaveLength(readdirSync(dirname(killed)).length + 1);
  });

  test('with a whole page overwritten is left as it was, and the commits from there on are counted', () => {
    const file = copyOf(killed);
    const log = logOf(file);
    const wal = readWal(log)!;
    log.fill(0xa5, wal.frames[9]!.offset, wal.frames[9]!.offset + 4096);
    writeFileSync(`${file}-wal`, log);
    const lost = wal.frames.slice(9).filter(({ pagesAfterCommit }) => pagesAfterCommit > 0).length;
    expect(repairWal(file)).toEqual({ kind: 'cut', laterCommits: lost });
    expect(logOf(file).equals(log)).toBe(true);
  });

  test('whose last frame was being written when it ended is as it should be', () => {
    const file = copyOf(killed);
    writeFileSync(`${file}-wal`, logOf(file).subarray(0, -2000));
    expect(repairWal(file)).toEqual({ kind: 'sound' });
  });

  // A disk writes the sectors of one commit in any order. Such a yard was refused as damaged.
  test('whose last commit is there but for one of its sectors is as it should be', () => {
    const wal = readWal(logOf(killed))!;
    const isEnd = ({ pagesAfterCommit }: { pagesAfterCommit: number }) => pagesAfterCommit > 0;
    const last = wal.frames.slice(wal.frames.slice(0, -1).findLastIndex(isEnd) + 1);
    let torn = 0;
    for (const { offset } of last.slice(0, -1)) {
      const file = copyOf(killed);
      const log = logOf(file);
      // The last one that is whole in this page, where SQLite puts the rows.
      const end = Math.floor((offset + wal.pageSize) / 512) * 512;
      log.fill(0, end - 512, end);
      if (log.equals(logOf(file))) continue;
      writeFileSync(`${file}-wal`, log);
      expect(repairWal(file)).toEqual({ kind: 'sound' });
      expect(readingsOf(file)).toBe(READINGS - 1);
      torn++;
    }
    expect(torn).toBeGreaterThan(1);
  });
});

test('what is no WAL is none', () => {
  expect(readWal(Buffer.alloc(0))).toBeNull();
  expect(readWal(Buffer.alloc(5000, 0xa5))).toBeNull();
});
