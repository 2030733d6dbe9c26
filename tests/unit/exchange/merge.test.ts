/** Two files of one yard, each with what its person did since, become one. */
import { randomUUID } from 'node:crypto';
import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { bringIn } from '../../../electron/exchange/bringing-in.ts';
import { openYard, type Yard } from '../../../electron/store/yard.ts';
import { recordReads } from '../../../electron/store/yard-records.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Merged, Side } from '../../../shared-core/contract/exchange.ts';
import { tableOf, type YardRecord, yardTableNames } from '../../../shared-core/exchange/yard-tables.ts';
import { doSteps, emptyYard, firstSteps, newFolder, type Step, stepArbitrary } from './a-filled-yard.ts';

vi.setConfig({ testTimeout: 60_000 });

/** The same histories in each run of the tests; another seed hunts for rarer faults. */
const HISTORIES = { seed: 1, endOnFailure: true } as const;

const act = () => ({
  id: randomUUID(),
  request: 'exchange.merge',
  inputHash: '',
  at: '2026-06-01T08:00:00.000Z',
  who: 'test',
});

/** The own file with the other in it; the own one itself where nothing in the other is new. */
async function merged(
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
function forked(before: readonly Step[]): { mine: Yard; theirs: Yard } {
  const mine = emptyYard();
  doSteps(mine, [...firstSteps, ...before], 0);
  mine.checkpoint();
  const copy = join(newFolder(), 'yard.sqlite');
  copyFileSync(mine.file, copy);
  return { mine, theirs: openYard(copy) };
}

type Records = Record<string, Record<string, YardRecord>>;
function recordsOf(file: string): Records {
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
  return records;
}

/** What holds of each group of records of which the newest does. */
function holding(records: Records): Record<string, unknown> {
  const held: Record<string, unknown> = {};
  for (const named of yardTableNames) {
    const { way } = tableOf(named);
    if (typeof way === 'string') continue;
    for (const { uuid: _, version: __, ...record } of Object.values(records[named]!)) {
      held[JSON.stringify([named, ...way.map((field) => (record as Record<string, unknown>)[field])])] =
        record;
    }
  }
  return held;
}

const uuidsOf = (records: Records): string[] =>
  Object.values(records)
    .flatMap((each) => Object.keys(each))
    .sort();

/** But for what the window chose, and for marks of what was undone, which may come back. */
function entered({ settings: _, confirmedSpecies: __, undoneRows: ___, ...records }: Records): string[] {
  return uuidsOf(records);
}

/** Without what depends on the order in which two files are brought together: names that were taken, and version numbers. */
function comparable(records: Records): unknown {
  const { settings: _, confirmedSpecies, ...others } = records;
  return {
    ...Object.fromEntries(
      Object.entries(others).map(([named, all]) => [
        named,
        Object.fromEntries(
          Object.entries(all).map(([uuid, record]) => [
            uuid,
            named === 'meterProfiles' ? { ...record, version: 0 } : record,
          ]),
        ),
      ]),
    ),
    confirmedSpecies: Object.values(confirmedSpecies!)
      .map(({ board, speciesId }) => `${board} ${speciesId}`)
      .sort(),
  };
}

/** Records that were merged, but into none that is there, or that are still in the lists. */
function mergedWithoutOne({ boards, boardOrigins }: Records): string[] {
  const into = new Map(
    Object.values(boardOrigins!)
      .filter(({ how }) => how === 'merged')
      .map(({ parent, child }) => [String(parent), String(child)]),
  );
  const isMerged = ({ archivedWhy }: YardRecord) =>
    (archivedWhy as { code?: string } | null)?.code === 'merged';
  const isLost = (record: YardRecord): boolean => {
    let [uuid, steps] = [record.uuid, 0];
    for (let next = into.get(uuid); next !== undefined && steps <= into.size; next = into.get(uuid), steps++)
      uuid = next;
    return isMerged(record) !== into.has(record.uuid) || steps > into.size;
  };
  return Object.values(boards!)
    .filter(isLost)
    .map(({ uuid }) => uuid);
}

/** Origins that say that a record was merged, where it was asked about that record. */
function partedByChoice(files: readonly Records[], { clashes }: Merged): Set<string> {
  const asked = new Set(clashes.map(({ id }) => id));
  const origins = files.flatMap(({ boardOrigins }) => Object.values(boardOrigins!));
  return new Set(
    origins
      .filter(({ how, parent }) => how === 'merged' && asked.has(String(parent)))
      .map(({ uuid }) => uuid),
  );
}

test('nothing is doubled and nothing lost, whatever both did, and whichever file takes the other in', async () => {
  const some = fc.array(stepArbitrary, { maxLength: 40 });
  await fc.assert(
    fc.asyncProperty(
      some,
      some,
      some,
      fc.constantFrom<Side>('mine', 'theirs'),
      async (before, a, b, rest) => {
        const { mine, theirs } = forked(before);
        const base = entered(recordsOf(theirs.file));
        doSteps(mine, a, 1);
        doSteps(theirs, b, 2);
        mine.close();
        theirs.close();
        const one = await merged(mine.file, theirs.file, rest);
        const all = recordsOf(one.file);
        const [ours, others] = [mine.file, theirs.file].map((file) => entered(recordsOf(file))) as [
          string[],
          string[],
        ];
        // What one of the two deleted goes, and so does that a record was merged where it stays by choice. All else is there.
        const deleted = new Set(base.filter((uuid) => !ours.includes(uuid) || !others.includes(uuid)));
        const parted = partedByChoice([recordsOf(mine.file), recordsOf(theirs.file)], one.merged);
        const present = new Set(uuidsOf(all));
        const lost = [...ours, ...others].filter(
          (uuid) => !present.has(uuid) && !deleted.has(uuid) && !parted.has(uuid),
        );
        expect(lost).toEqual([]);
        expect(mergedWithoutOne(all)).toEqual([]);
        // Again, and there is nothing new.
        const again = await merged(one.file, theirs.file, rest === 'mine' ? 'theirs' : 'mine');
        expect(again.merged).toMatchObject({ added: {}, edited: 0, deleted: {}, leaves: [], clashes: [] });
        expect(again.file).toBe(one.file);
        // The other way round, with the same choices.
        const other = await merged(theirs.file, mine.file, rest === 'mine' ? 'theirs' : 'mine');
        const records = recordsOf(other.file);
        expect(comparable(records)).toEqual(comparable(all));
        expect(Object.keys(holding(records)).sort()).toEqual(Object.keys(holding(all)).sort());
        // And back: who was merged takes the other in without a question.
        const back = await merged(theirs.file, one.file, 'mine');
        expect(back.merged.clashes).toEqual([]);
        expect(comparable(recordsOf(back.file))).toEqual(comparable(all));
      },
    ),
    { ...HISTORIES, numRuns: 4 },
  );
});

/** What is in the lists of a yard: boards that are not archived, and readings that hold of rounds and boards that do. */
function listed(records: Records): { boards: Set<string>; readings: Set<string> } {
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

test('nothing that I went on with leaves my lists without a question', async () => {
  const some = fc.array(stepArbitrary, { maxLength: 30 });
  const leaving: Step['what'][] = ['archive', 'undo', 'read', 'exclude', 'edit-board', 'rip', 'merge-boards'];
  const more = fc.array(
    stepArbitrary.map((step) => ({ ...step, what: leaving[step.a % leaving.length]! })),
    { minLength: 8, maxLength: 25 },
  );
  let kept = 0;
  await fc.assert(
    fc.asyncProperty(some, more, more, async (before, a, b) => {
      const { mine, theirs } = forked(before);
      const base = recordsOf(theirs.file);
      // One board that they let go and I went on with, whatever else is drawn.
      doSteps(mine, [{ what: 'edit-board', a: 0, b: 1, text: 'mine' }, ...a], 1);
      doSteps(theirs, [{ what: 'archive', a: 0, b: 0, text: '' }, ...b], 2);
      mine.close();
      theirs.close();
      const [ours, others] = [recordsOf(mine.file), recordsOf(theirs.file)];
      const [had, left] = [listed(ours), listed(others)];
      const isNew = (named: string, uuid: string) => base[named]![uuid] === undefined;
      const amended = Object.values(ours.amendments!).filter(
        ({ uuid }) => isNew('amendments', uuid) && ours.undoneRows![uuid] === undefined,
      );
      const worked = {
        readings: [...had.readings].filter(
          (uuid) => isNew('readings', uuid) || amended.some(({ reading }) => reading === uuid),
        ),
        boards: [...had.boards].filter(
          (uuid) =>
            JSON.stringify(base.boards![uuid]) !== JSON.stringify(ours.boards![uuid]) ||
            [...had.readings].some((each) => isNew('readings', each) && ours.readings![each]!.board === uuid),
        ),
      };
      const one = await merged(mine.file, theirs.file, 'mine');
      const has = listed(recordsOf(one.file));
      for (const named of ['boards', 'readings'] as const) {
        expect(worked[named].filter((uuid) => !has[named].has(uuid))).toEqual([]);
        // Who takes theirs in all questions has what they let go.
        kept += worked[named].filter((uuid) => base[named]![uuid] && !left[named].has(uuid)).length;
      }
    }),
    { ...HISTORIES, numRuns: 5 },
  );
  // Otherwise nothing was tried.
  expect(kept).toBeGreaterThan(0);
});
