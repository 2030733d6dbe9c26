/** Boards that were entered twice, and merged otherwise in two files of a yard, or in one of them only. */
import { expect, test } from 'vitest';
import type { Yard } from '../../../electron/store/yard.ts';
import type { Side } from '../../../shared-core/contract/exchange.ts';
import { say } from '../app/a-window.ts';
import { mergeBoards, rip, undoAct } from './a-filled-yard.ts';
import { asAct, forked, merged, mergedWithoutOne, readInLists, recordsOf } from './two-files.ts';

const HERE = '2026-01-02T08:00:00.000Z';
const THERE = '2026-01-03T08:00:00.000Z';

/** Three boards, each read once, and what each of two does with them in its file; the boards by their row ids. */
function twoFiles(here: (yard: Yard, boards: number[]) => void, there: typeof here) {
  const { mine, theirs } = forked([]);
  const { rows } = mine.boards.page({ stackId: null, search: '', offset: 0, limit: 3 });
  const ids = rows.map(({ id }) => id);
  asAct(mine, HERE, () => here(mine, ids));
  asAct(theirs, THERE, () => there(theirs, ids));
  mine.close();
  theirs.close();
  return { mine: mine.file, theirs: theirs.file, codes: rows.map(({ code }) => code) };
}

/** The boards in the lists, by their IDs, after the two were brought together. */
async function broughtTogether({ mine, theirs }: ReturnType<typeof twoFiles>, side: Side) {
  const { file, merged: came } = await merged(mine, theirs, side);
  const records = recordsOf(file);
  expect(mergedWithoutOne(records)).toEqual([]);
  // Nobody is asked again.
  expect((await merged(file, theirs)).merged).toMatchObject({ clashes: [], edited: 0, leaves: [] });
  const boards = Object.values(records.boards!).filter(({ archivedAt }) => archivedAt === null);
  return {
    ...came,
    boards: boards.map(({ code }) => code).sort(),
    records,
    readings: readInLists(records).size,
    leaves: came.leaves.map((each) => say(each)),
    cuts: came.cuts.map((each) => say(each)),
    asked: came.clashes.map(({ record, mine: here, theirs: there }) =>
      [record, ...here, ...there].map((each) => say(each)),
    ),
  };
}

test.each<Side>(['mine', 'theirs'])(
  'a record merged into another board in each file is asked once: %s',
  async (side) => {
    const files = twoFiles(
      (yard, [one, two]) => mergeBoards(yard, one!, two!, HERE),
      (yard, [, two, three]) => mergeBoards(yard, three!, two!, THERE),
    );
    const [one, two, three] = files.codes;
    const { boards, readings, asked } = await broughtTogether(files, side);
    expect(asked).toEqual([
      [`Board ${two}`, `Merged into ${one} on Jan 2, 2026.`, `Merged into ${three} on Jan 3, 2026.`],
    ]);
    expect(boards).toEqual([one, three]);
    expect(readings).toBe(3);
  },
);

test.each<Side>(['mine', 'theirs'])(
  'records merged into each other in a circle are one question: %s',
  async (side) => {
    const files = twoFiles(
      (yard, [one, two, three]) => {
        mergeBoards(yard, two!, one!, HERE);
        mergeBoards(yard, three!, two!, HERE);
      },
      (yard, [one, , three]) => mergeBoards(yard, one!, three!, THERE),
    );
    const [one, two, three] = files.codes;
    const { boards, readings, asked } = await broughtTogether(files, side);
    expect(asked).toEqual([
      [
        `Boards ${one}, ${two}, and ${three}`,
        `${one} merged into ${two} on Jan 2, 2026.`,
        `${two} merged into ${three} on Jan 2, 2026.`,
        `${three} merged into ${one} on Jan 3, 2026.`,
      ],
    ]);
    expect(boards).toEqual([side === 'mine' ? three : one]);
    expect(readings).toBe(3);
  },
);

test('a record that both merged into the same board is no question', async () => {
  const files = twoFiles(
    (yard, [one, two]) => mergeBoards(yard, one!, two!, HERE),
    (yard, [one, two]) => mergeBoards(yard, one!, two!, THERE),
  );
  const { boards, asked, records } = await broughtTogether(files, 'theirs');
  expect(asked).toEqual([]);
  expect(boards).toEqual([files.codes[0], files.codes[2]]);
  expect(Object.values(records.boardOrigins!)).toMatchObject([{ at: HERE }]);
});

test('a record merged into one that the other file deleted is in the lists again', async () => {
  const files = twoFiles(
    (yard, [one, two]) => mergeBoards(yard, one!, two!, HERE),
    (yard, [one]) => yard.boards.archive([one!], THERE, { code: 'deleted', note: '' }),
  );
  const [one, two, three] = files.codes;
  const { boards, leaves } = await broughtTogether(files, 'theirs');
  expect(boards).toEqual([two, three]);
  expect(leaves).toEqual([`1 board leaves your lists: ${one}.`]);
  // The same seen from there: nothing leaves.
  const there = await broughtTogether({ ...files, mine: files.theirs, theirs: files.mine }, 'mine');
  expect(there.boards).toEqual([two, three]);
  expect(there.leaves).toEqual([]);
});

test('a record merged into one that the other file sold goes with it', async () => {
  const files = twoFiles(
    (yard, [one, two]) => mergeBoards(yard, one!, two!, HERE),
    (yard, [one]) => yard.boards.archive([one!], THERE, { code: 'sold', note: '' }),
  );
  expect((await broughtTogether(files, 'theirs')).boards).toEqual([files.codes[2]]);
});

test.each<Side>(['mine', 'theirs'])(
  'a board cut there and merged here is told, as its wood is there twice: %s',
  async (side) => {
    const files = twoFiles(
      (yard, [one, two]) => mergeBoards(yard, one!, two!, HERE),
      (yard, [, two]) => rip(yard, two!, ['P-1', 'P-2'], THERE),
    );
    const [one, , three] = files.codes;
    const { boards, cuts } = await broughtTogether(files, side);
    expect(boards).toEqual([one, three, 'P-1', 'P-2'].sort());
    expect(cuts).toEqual([expect.stringContaining(`1 board is in your lists whole and in pieces: ${one}.`)]);
  },
);

/** A board ripped before the two files went apart, and the cut undone in the other one. */
function cutAndUndoneThere(here: (yard: Yard, pieces: number[]) => void) {
  const { mine, theirs } = forked([{ what: 'rip', a: 0, b: 0, text: '' }]);
  const { rows } = mine.boards.page({ stackId: null, search: '', offset: 0, limit: 10 });
  const [board] = rows.flatMap(({ id }) => mine.origins.parents(id));
  const pieces = mine.origins.children(board!.boardId).map(({ boardId, code }) => ({ boardId, code }));
  asAct(mine, HERE, () =>
    here(
      mine,
      pieces.map(({ boardId }) => boardId),
    ),
  );
  const cut = theirs.acts.page(null, 1, null)[0]!;
  asAct(theirs, THERE, () => undoAct(theirs, cut.id, THERE));
  mine.close();
  theirs.close();
  return { mine: mine.file, theirs: theirs.file, codes: [board!.code, ...pieces.map(({ code }) => code)] };
}

test('pieces of a cut that was undone there go here as well, also where their readings were judged', async () => {
  const files = cutAndUndoneThere((yard) => yard.settings.put('settings', { units: 'metric' }));
  const [board, ...pieces] = files.codes;
  const { boards, cuts } = await broughtTogether(files, 'mine');
  expect(boards).toContain(board);
  for (const piece of pieces) expect(boards).not.toContain(piece);
  expect(cuts).toEqual([]);
});

test('a piece that I read keeps where it is and what it came from, though the cut was undone there', async () => {
  const files = cutAndUndoneThere((yard, [piece]) => yard.samples.weigh(piece!, 3, HERE));
  const [board, piece, other] = files.codes;
  for (const one of [files, { ...files, mine: files.theirs, theirs: files.mine }]) {
    const { boards, cuts, records } = await broughtTogether(one, 'mine');
    expect(boards).toEqual(expect.arrayContaining([board, piece]));
    expect(boards).not.toContain(other);
    expect(Object.values(records.boardOrigins!)).toHaveLength(1);
    expect(cuts).toEqual([expect.stringContaining(`whole and in pieces: ${board}.`)]);
  }
});
