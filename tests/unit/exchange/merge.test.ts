/** Two files of one yard, each with what its person did since, become one. */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import type { Merged, Side } from '../../../shared-core/contract/exchange.ts';
import { tableOf, type YardRecord, yardTableNames } from '../../../shared-core/exchange/yard-tables.ts';
import { say } from '../app/a-window.ts';
import { doSteps, type Step, stepArbitrary, undoAct } from './a-filled-yard.ts';
import {
  asAct,
  forked,
  listed,
  merged,
  mergedWithoutOne,
  miscounted,
  type Records,
  readInLists,
  readOfSold,
  recordsOf,
  staysInLists,
} from './two-files.ts';

/**
 * The same histories in each run of the tests. To hunt for rarer faults, give another seed and how many: a failure prints its
 * seed and path.
 */
const { HISTORIES_SEED: seed = '1', HISTORIES_RUNS: runs } = process.env;
const histories = (usual: number) => ({
  seed: Number(seed),
  numRuns: Number(runs ?? usual),
  endOnFailure: true,
});

vi.setConfig({ testTimeout: runs === undefined ? 60_000 : 3_600_000 });

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

/** What says of a record where it came from: both files may have it, each under its own UUID. */
const originOf = ({ how, child, parent }: YardRecord): string => `${how} ${parent} into ${child}`;

/** But for what the window chose, and for marks of what was undone, which may come back. */
function entered(records: Records): string[] {
  const { settings: _, confirmedSpecies: __, undoneRows: ___, boardOrigins, ...others } = records;
  return [...uuidsOf(others), ...Object.values(boardOrigins!).map(originOf)];
}

/** Without what depends on the order in which two files are brought together: names that were taken, and version numbers. */
function comparable(records: Records): unknown {
  const { settings: _, confirmedSpecies, boardOrigins, ...others } = records;
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
    boardOrigins: Object.values(boardOrigins!)
      .map(({ uuid: _uuid, ...origin }) => JSON.stringify(origin))
      .sort(),
    confirmedSpecies: Object.values(confirmedSpecies!)
      .map(({ board, speciesId }) => `${board} ${speciesId}`)
      .sort(),
  };
}

/** What says that a record was merged, where it was asked about that record or, with it, the other. */
function partedByChoice(files: readonly Records[], { clashes }: Merged): Set<string> {
  const asked = new Set(clashes.map(({ id }) => id));
  const origins = files.flatMap(({ boardOrigins }) => Object.values(boardOrigins!));
  return new Set(
    origins
      .filter(
        ({ how, parent, child }) =>
          how === 'merged' && (asked.has(String(parent)) || asked.has(String(child))),
      )
      .map(originOf),
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
        const present = new Set(entered(all));
        const lost = [...ours, ...others].filter(
          (uuid) => !present.has(uuid) && !deleted.has(uuid) && !parted.has(uuid),
        );
        expect(lost).toEqual([]);
        expect(mergedWithoutOne(all)).toEqual([]);
        expect(miscounted(one.file, [mine.file, theirs.file])).toEqual([]);
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
    histories(4),
  );
});

test('nothing that I went on with leaves my lists without a question', async () => {
  const some = fc.array(stepArbitrary, { maxLength: 30 });
  const leaving: Step['what'][] = [
    'archive',
    'undo',
    'read',
    'exclude',
    'edit-board',
    'rip',
    'merge-boards',
    'move-reading',
    'correct',
  ];
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
    // In the first, each does only what is there whatever is drawn.
    { ...histories(5), examples: [[[], [], []]] },
  );
  // Otherwise nothing was tried.
  expect(kept).toBeGreaterThan(0);
});

test('a reading that is in the lists of both stays in one, whatever records either merged and whatever is answered', async () => {
  const often: Step['what'][] = [
    'merge-boards',
    'merge-boards',
    'move-reading',
    'move-reading',
    'correct',
    'undo',
    'read',
    'edit-board',
    'archive',
    'board',
  ];
  const some = fc.array(
    stepArbitrary.map((step) => ({ ...step, what: often[step.a % often.length]! })),
    { minLength: 1, maxLength: 8 },
  );
  await fc.assert(
    fc.asyncProperty(some, some, some, fc.array(fc.boolean()), async (before, a, b, answers) => {
      const { mine, theirs } = forked(before);
      doSteps(mine, a, 1);
      doSteps(theirs, b, 2);
      mine.close();
      theirs.close();
      const files = [recordsOf(mine.file), recordsOf(theirs.file)] as const;
      const [ours, others] = [readInLists(files[0]), readInLists(files[1])];
      const { clashes } = (await merged(mine.file, theirs.file)).merged;
      const chosen = clashes.filter((_, at) => answers[at % answers.length]).map(({ id }) => id);
      const one = await merged(mine.file, theirs.file, 'mine', chosen);
      const all = recordsOf(one.file);
      expect(mergedWithoutOne(all)).toEqual([]);
      expect(miscounted(one.file, [mine.file, theirs.file])).toEqual([]);
      // A record that one merged into a board that the other sold goes with it, where that is chosen.
      const has = new Set([...readInLists(all), ...readOfSold(all)]);
      const isIn = (reading: YardRecord, read: ReadonlySet<string>, records: Records) =>
        read.has(reading.uuid) ||
        (records.readings![reading.uuid] === undefined && staysInLists(records)(reading));
      const inBoth = [...new Set([...ours, ...others])].filter((uuid) => {
        const reading = all.readings![uuid]!;
        return isIn(reading, ours, files[0]) && isIn(reading, others, files[1]);
      });
      expect(inBoth.filter((uuid) => !has.has(uuid))).toEqual([]);
      const again = await merged(one.file, theirs.file, 'theirs');
      expect(again.merged).toMatchObject({ added: {}, edited: 0, deleted: {}, leaves: [], clashes: [] });
      // A question about a correction is named by the own one, which is another the other way round.
      const asked = (await merged(theirs.file, mine.file)).merged.clashes;
      const what = (id: string) =>
        files
          .flatMap(({ amendments }) => amendments![id] ?? [])
          .map(({ reading, field }) => `${reading} ${field}`)[0] ?? id;
      const alike = new Set(chosen.map(what));
      const turned = asked.filter(({ id }) => alike.has(what(id))).map(({ id }) => id);
      const other = await merged(theirs.file, mine.file, 'theirs', turned);
      expect(comparable(recordsOf(other.file))).toEqual(comparable(all));
    }),
    histories(5),
  );
});

test('boards whose merge they undid and made again are merged still', async () => {
  const again: Step = { what: 'merge-boards', a: 7, b: 0, text: '' };
  const { mine, theirs } = forked([again]);
  const at = '2026-01-03T08:00:00.000Z';
  asAct(theirs, at, () => undoAct(theirs, theirs.acts.page(null, 1, null)[0]!.id, at));
  doSteps(theirs, [again], 3);
  mine.close();
  theirs.close();
  for (const files of [[mine.file, theirs.file] as const, [theirs.file, mine.file] as const]) {
    const all = recordsOf((await merged(...files)).file);
    expect(Object.values(all.boardOrigins!)).toMatchObject([{ how: 'merged' }]);
    expect(mergedWithoutOne(all)).toEqual([]);
  }
});

test('an edit of a species that came with the program, undone in one, is undone in both', async () => {
  const { mine, theirs } = forked([{ what: 'edit-species', a: 6, b: 0, text: 'mine' }]);
  const at = '2026-01-03T08:00:00.000Z';
  expect(theirs.acts.page(null, 1, null)[0]).toMatchObject({ request: 'test.edit-species' });
  asAct(theirs, at, () => undoAct(theirs, theirs.acts.page(null, 1, null)[0]!.id, at));
  mine.close();
  theirs.close();
  expect(Object.keys(recordsOf(mine.file).species!)).toHaveLength(1);
  for (const files of [[mine.file, theirs.file] as const, [theirs.file, mine.file] as const]) {
    const all = recordsOf((await merged(...files)).file);
    expect(all.species).toEqual({});
  }
});

test.each<Side>(['mine', 'theirs'])(
  'a species that one edited again and the other undid is as chosen, and stays so: %s',
  async (side) => {
    const { mine, theirs } = forked([{ what: 'edit-species', a: 6, b: 0, text: 'first' }]);
    const at = '2026-01-03T08:00:00.000Z';
    asAct(theirs, at, () => undoAct(theirs, theirs.acts.page(null, 1, null)[0]!.id, at));
    doSteps(mine, [{ what: 'edit-species', a: 6, b: 0, text: 'again' }], 3);
    mine.close();
    theirs.close();
    const noted = side === 'mine' ? [{ record: { note: 'again' }, builtIn: false }] : [];
    const one = await merged(mine.file, theirs.file, side);
    expect(one.merged.clashCount).toBe(1);
    expect(Object.values(recordsOf(one.file).species!)).toMatchObject(noted);
    const other = await merged(theirs.file, mine.file, side === 'mine' ? 'theirs' : 'mine');
    expect(Object.values(recordsOf(other.file).species!)).toMatchObject(noted);
  },
);

test.each<[Side, number]>([
  ['mine', 2],
  ['theirs', 4],
])(
  'a round that I undid and they read more in is asked about once, and all its readings go with it or stay: %s',
  async (side, inLists) => {
    const { mine, theirs } = forked([]);
    const at = '2026-01-02T08:00:00.000Z';
    asAct(mine, at, () => undoAct(mine, mine.acts.page(null, 1, null)[0]!.id, at));
    const boards = theirs.boards.page({ stackId: null, search: '', offset: 0, limit: 3 }).rows;
    const started = boards.map(
      ({ id }) => theirs.rounds.get(theirs.readings.roundsOfBoard(id)[0]!)!.startedAt,
    );
    const last = started.indexOf(started.toSorted().at(-1)!);
    doSteps(theirs, [{ what: 'read', a: last, b: 1, text: '' }], 2);
    mine.close();
    theirs.close();
    const one = await merged(mine.file, theirs.file, side);
    expect(
      one.merged.clashes.map((each) => [...each.mine, ...each.theirs].map((words) => say(words))),
    ).toEqual([['Undone on Jan 2, 2026.', 'Not deleted.', 'Since the last common change: 1 reading']]);
    expect(readInLists(recordsOf(one.file)).size).toBe(inLists);
    // What is in no list is there still.
    expect(Object.keys(recordsOf(one.file).readings!)).toHaveLength(4);
    const again = await merged(one.file, theirs.file, 'theirs');
    expect(again.merged).toMatchObject({ edited: 0, leaves: [], clashes: [] });
  },
);
