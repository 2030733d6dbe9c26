import { copyFileSync, mkdtempSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, test } from 'vitest';
import { migrations } from '../../../electron/store/migrations.ts';
import { openYardFile, YardFileProblem } from '../../../electron/store/yard-file.ts';
import { APPLICATION_ID } from '../../../electron/store/yard-identity.ts';
import { message } from '../../../shared-core/words/message.ts';
import { copyOfLayout } from './layout-copy.ts';

let file: string;
beforeEach(() => {
  file = join(mkdtempSync(join(tmpdir(), 'pintally-identity-')), 'yard.sqlite');
});

/** Every file of the folder with what is in it. */
const folder = () =>
  Object.fromEntries(
    readdirSync(dirname(file)).map((name) => [name, readFileSync(join(dirname(file), name), 'hex')]),
  );

function problemOfOpening(): YardFileProblem {
  try {
    openYardFile(file).db.close();
  } catch (error) {
    expect(error).toBeInstanceOf(YardFileProblem);
    return error as YardFileProblem;
  }
  throw new Error('it opened');
}

/** Puts a file where the yard is, as a program leaves it that is killed after this: with its log beside. */
function leftByKill(...sql: string[]): void {
  const made = join(mkdtempSync(join(tmpdir(), 'pintally-killed-')), 'made');
  const db = new Database(made);
  db.pragma('journal_mode = WAL');
  for (const each of sql) {
    db.pragma('wal_checkpoint(TRUNCATE)');
    db.exec(each);
  }
  copyFileSync(made, file);
  copyFileSync(`${made}-wal`, `${file}-wal`);
  db.close();
}

function markOf(): { id: unknown; layout: unknown } {
  const db = new Database(file, { readonly: true });
  const id = db.pragma('application_id', { simple: true });
  const layout = db.pragma('user_version', { simple: true });
  db.close();
  return { id, layout };
}

describe("a file of another program where the yard's is expected", () => {
  const tables = 'CREATE TABLE song (title TEXT); CREATE TABLE place (name TEXT)';
  test.each([
    ['without a mark', tables],
    ['of its own numbered layout', `${tables}; PRAGMA user_version = 3`],
    ['with a mark of its own', `${tables}; PRAGMA application_id = 77; PRAGMA user_version = 3`],
    ['without tables', 'PRAGMA user_version = 0'],
  ])('%s is refused, untouched, and nothing is made beside it', (_what, sql) => {
    const db = new Database(file);
    db.exec(sql);
    db.pragma('journal_mode = WAL');
    db.close();
    const before = folder();
    const { problem, damaged } = problemOfOpening();
    expect(problem).toEqual(message('refusal.yard-foreign', { file }));
    expect(damaged).toBe(false);
    expect(folder()).toEqual(before);
  });

  test('that was killed is refused, and its log stays as it was', () => {
    leftByKill(tables, 'INSERT INTO song VALUES (1)');
    const before = folder();
    expect(problemOfOpening().problem).toEqual(message('refusal.yard-foreign', { file }));
    expect(folder()).toEqual(before);
  });
});

describe('a yard file of a newer Pintally', () => {
  const newer = `PRAGMA user_version = ${migrations.length + 1}`;
  const mark = `PRAGMA application_id = ${APPLICATION_ID}`;

  test.each([
    [
      'whose layout is in the file',
      [mark, `CREATE TABLE yard (uuid); ${newer}`, 'INSERT INTO yard VALUES (1)'],
    ],
    ['whose layout is still in its log', [mark, `CREATE TABLE yard (uuid); ${newer}`]],
  ])('that was killed, %s, is refused and untouched', (_where, sql) => {
    leftByKill(...sql);
    const before = folder();
    expect(problemOfOpening().problem).toEqual(message('refusal.yard-newer', { file }));
    expect(folder()).toEqual(before);
  });
});

describe('a file without a mark', () => {
  test('and without anything in it is made a yard', () => {
    writeFileSync(file, '');
    openYardFile(file).db.close();
    expect(markOf()).toEqual({ id: APPLICATION_ID, layout: migrations.length });
  });

  test.each([1, 9])('with the tables of layout %i is ours, and is marked', (layout) => {
    copyFileSync(copyOfLayout(layout), file);
    expect(markOf().id).toBe(0);
    openYardFile(file).db.close();
    expect(markOf()).toEqual({ id: APPLICATION_ID, layout: migrations.length });
  });

  test('with the newest tables is ours, and is marked', () => {
    openYardFile(file).db.close();
    const db = new Database(file);
    db.pragma('application_id = 0');
    db.close();
    openYardFile(file).db.close();
    expect(markOf().id).toBe(APPLICATION_ID);
  });
});

test('the WAL of a yard whose file is gone is not deleted', () => {
  leftByKill('CREATE TABLE yard (uuid)');
  renameSync(file, `${file}.elsewhere`);
  const before = folder();
  const { problem, damaged } = problemOfOpening();
  expect(problem).toEqual(message('refusal.yard-missing', { file }));
  expect(damaged).toBe(true);
  expect(folder()).toEqual(before);
});

// A file of one byte has no pages for SQLite, which would delete the log and begin.
test.each(['', 'a log'])(
  'a file of one byte is taken for a damaged one, untouched, with %j beside',
  (log) => {
    if (log !== '') leftByKill('CREATE TABLE yard (uuid)', 'INSERT INTO yard VALUES (1)');
    writeFileSync(file, 'S');
    const before = folder();
    const { problem, damaged } = problemOfOpening();
    expect(problem).toEqual(message('refusal.yard-damaged', { file }));
    expect(damaged).toBe(true);
    expect(folder()).toEqual(before);
  },
);

test('a yard that was killed opens with what is in its log', () => {
  const made = openYardFile(file);
  made.db.exec("INSERT INTO setting (key, uuid, value) VALUES ('units', 'u', '\"metric\"')");
  const killed = join(mkdtempSync(join(tmpdir(), 'pintally-killed-')), 'yard.sqlite');
  for (const suffix of ['', '-wal']) copyFileSync(file + suffix, killed + suffix);
  made.db.close();
  const { db } = openYardFile(killed);
  expect(db.prepare('SELECT key FROM setting').pluck().all()).toEqual(['units']);
  db.close();
});
