import { randomUUID } from 'node:crypto';
import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect } from 'vitest';
import { bringIn } from '../../../electron/exchange/bringing-in.ts';
import { meterReads } from '../../../electron/store/meter-table.ts';
import { readingReads } from '../../../electron/store/reading-table.ts';
import { openYard, type Yard } from '../../../electron/store/yard.ts';
import { recordReads } from '../../../electron/store/yard-records.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Merged, Side } from '../../../shared-core/contract/exchange.ts';
import { type YardRecord, yardTableNames } from '../../../shared-core/exchange/yard-tables.ts';
import { doSteps, emptyYard, firstSteps, newFolder, type Step } from './a-filled-yard.ts';

const act = () => ({
  id: randomUUID(),
  request: 'exchange.merge',
  inputHash: '',
  at: '2026-06-01T08:00:00.000Z',
  who: 'test',
});

/** The own file with the other in it; the own one itself where nothing in the other is new. */
export async function merged(
  own: string,
  file: string,
  rest: Side = 'mine',
  others: readonly string[] = [],
): Promise<{ file: string; merged: Merged }> {
  const what = { own, file, act: act(), fileName: 'theirs.sqlite', choices: { rest, others } };
  const target = join(newFolder(), 'merged.sqlite');
  try {
    const came = await bringIn({ ...what, target }, () => undefined);
    return { file: target, merged: came.merged };
  } catch (error) {
    if (!(error instanceof Refusal && error.problem.code === 'refusal.merge-nothing')) throw error;
    const { merged } = await bringIn({ ...what, target: null }, () => undefined);
    return { file: own, merged };
  }
}

/** A yard, and a file of its own that is the same. */
export function forked(before: readonly Step[]): { mine: Yard; theirs: Yard } {
  const mine = emptyYard();
  doSteps(mine, [...firstSteps, ...before], 0);
  mine.checkpoint();
  const copy = join(newFolder(), 'yard.sqlite');
  copyFileSync(mine.file, copy);
  return { mine, theirs: openYard(copy) };
}

export type Records = Record<string, Record<string, YardRecord>>;
export function recordsOf(file: string): Records {
  const db = new Database(file, { readonly: true });
  const { all } = recordReads(db);
  const records = Object.fromEntries(
    yardTableNames.map((named) => [
      named,
      Object.fromEntries([...all(named)].map((each) => [each.uuid, each])),
    ]),
  );
  expect(db.pragma('foreign_key_check')).toEqual([]);
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  db.close();
  const moved = new Set(Object.values(records.moves!).map(({ board }) => board));
  const nowhere = Object.keys(records.boards!).filter((uuid) => !moved.has(uuid));
  expect(nowhere, 'boards that are nowhere').toEqual([]);
  return records;
}

const whyOf = ({ archivedWhy }: YardRecord) => (archivedWhy as { code?: string } | null)?.code;

/** For each record that was merged the one that has its readings now, however often that was merged since. */
function keptOf({ boardOrigins }: Records): (uuid: string) => string {
  const into = new Map<string, string>();
  for (const { how, parent, child } of Object.values(boardOrigins!)) {
    if (how !== 'merged') continue;
    expect(into.has(String(parent)), 'merged into two').toBe(false);
    into.set(String(parent), String(child));
  }
  return (uuid) => {
    let kept = uuid;
    for (let steps = 0; into.has(kept); steps++) {
      expect(steps, 'merged in a circle').toBeLessThan(into.size);
      kept = into.get(kept) as string;
    }
    return kept;
  };
}

/** Records that were merged, but into none that is there, or that are still in the lists. */
export function mergedWithoutOne(records: Records): string[] {
  const keptBy = keptOf(records);
  return Object.values(records.boards!)
    .filter((each) => (whyOf(each) === 'merged') !== (keptBy(each.uuid) !== each.uuid))
    .map(({ uuid }) => uuid);
}

/** The readings that hold of boards that left the lists for such a reason, null where they are in them; merged ones too. */
function readOf(records: Records, isSo: (why: string | null) => boolean): Set<string> {
  const { boards, rounds, readings, undoneRows } = records as Record<string, Record<string, YardRecord>>;
  const keptBy = keptOf(records);
  return new Set(
    Object.values(readings!)
      .filter(
        ({ uuid, board, round }) =>
          undoneRows![uuid] === undefined &&
          rounds![String(round)]!.undoneAt === null &&
          isSo(whyOf(boards![keptBy(String(board))]!) ?? null),
      )
      .map(({ uuid }) => uuid),
  );
}
export const readInLists = (records: Records): Set<string> => readOf(records, (why) => why === null);
/** Of boards that were sold, with the records that were merged into these. */
export const readOfSold = (records: Records): Set<string> => readOf(records, (why) => why === 'sold');

/**
 * Whether a reading that is not there would be in the lists: its board, or the one that this was merged into, did not leave
 * them, and its round was not undone.
 */
export function staysInLists({ boards, rounds, ...records }: Records): (reading: YardRecord) => boolean {
  const keptBy = keptOf(records);
  return ({ board, round }) =>
    (boards![keptBy(String(board))]?.archivedAt ?? null) === null &&
    (rounds![String(round)]?.undoneAt ?? null) === null;
}

/** What is in the lists of a yard: boards that are not archived, and readings that hold of rounds and boards that do. */
export function listed(records: Records): { boards: Set<string>; readings: Set<string> } {
  const { boards, rounds, readings, undoneRows } = records as Record<string, Record<string, YardRecord>>;
  const isIn = (record: YardRecord | undefined, field: string) =>
    record !== undefined && record[field] === null;
  return {
    boards: new Set(Object.keys(boards!).filter((uuid) => isIn(boards![uuid], 'archivedAt'))),
    readings: new Set(
      Object.values(readings!)
        .filter(
          ({ uuid, board, round }) =>
            undoneRows![uuid] === undefined &&
            isIn(boards![String(board)], 'archivedAt') &&
            isIn(rounds![String(round)], 'undoneAt'),
        )
        .map(({ uuid }) => uuid),
    ),
  };
}

/** What a person does in one act. */
export function asAct(yard: Yard, at: string, work: () => void): void {
  yard.transaction(() => {
    yard.acts.begin({ id: randomUUID(), request: 'boards.edit', inputHash: '', at, who: 'test' });
    work();
    yard.acts.finish(null);
  });
}

/** Of each reading as it was first saved, the values that count of it now, on whichever boards. */
function countingOf(file: string): Map<string, number[]> {
  const db = new Database(file, { readonly: true });
  const { get } = readingReads(db, meterReads(db));
  const rows = db
    .prepare<[], { id: number; uuid: string; movedFrom: string | null }>(
      `SELECT g.id, g.uuid, (SELECT value ->> '$' FROM amendment k
         WHERE k.reading_id = g.id AND k.field = 'movedFrom') AS movedFrom
       FROM reading g`,
    )
    .all();
  const fromOf = new Map(rows.map(({ uuid, movedFrom }) => [uuid, movedFrom]));
  const firstOf = (uuid: string): string => {
    const from = fromOf.get(uuid);
    return from == null ? uuid : firstOf(from);
  };
  const counting = new Map<string, number[]>();
  for (const { id, uuid } of rows) {
    const first = firstOf(uuid);
    const all = counting.get(first) ?? [];
    counting.set(first, all);
    const { excluded, raw } = get(id)!;
    if (excluded === null) all.push(raw);
  }
  db.close();
  return counting;
}

/** Readings that count on two boards, that count nowhere though they did in both files, or by a value that neither had. */
export function miscounted(file: string, both: readonly string[]): string[] {
  const before = both.map(countingOf);
  return [...countingOf(file)].flatMap(([first, now]) => {
    const were = before.flatMap((counting) => counting.get(first) ?? []);
    if (now.length > 1) return `${first} counts on ${now.length} boards`;
    if (now.length === 0 && were.length === before.length) return `${first} counts nowhere`;
    return now.every((raw) => were.includes(raw)) ? [] : `${first} has another value`;
  });
}
