/** Two files of one yard, in each of which something else was corrected of a reading. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeExport } from '../../../electron/exchange/export-file.ts';
import { makeYardOfJson } from '../../../electron/exchange/json-import.ts';
import { picturesBeside } from '../../../electron/store/picture-files.ts';
import { openYard, type Yard } from '../../../electron/store/yard.ts';
import type { Side } from '../../../shared-core/contract/exchange.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { say } from '../app/a-window.ts';
import { withYardOfTwo, yard } from '../app/yard-of-two.ts';
import { newFolder } from './a-filled-yard.ts';
import { downloaded } from './downloaded.ts';
import { elsewhere } from './elsewhere.ts';

// Real threads on a busy computer.
withYardOfTwo({ forecastAfterMs: 600_000 });

const on = async (index: number) =>
  (await yard.query('boards.get', { id: yard.boards[index]!.id })).readings.map(
    ({ raw, savedRaw, excluded }) => ({
      raw,
      savedRaw,
      why: excluded && 'code' in excluded ? excluded.code : null,
    }),
  );
const move = async () => {
  const [reading] = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
  const readingId = reading!.id;
  const boardId = yard.boards[1]!.id;
  await yard.command('readings.moveToBoard', { readingId, boardId, spotIndex: null, scope: 'reading' });
};
async function bringIn(file: string, rest: Side): Promise<void> {
  await yard.command('exchange.merge', { file, fileName: 'theirs.sqlite', rest, others: [], work: null });
  await yard.query('yard.info', {});
}

test('a value corrected in one holds on the board to which the other moved the reading', async () => {
  await yard.beginRound();
  const file = await elsewhere((theirs) => theirs.amendments.amendReading(1, 'raw', 14.2, yard.now()));
  await move();
  await bringIn(file, 'mine');
  expect(await on(1)).toEqual([{ raw: 14.2, savedRaw: 12.4, why: null }]);
  expect(await on(0)).toMatchObject([{ why: 'moved' }]);
});

test('a time corrected in one holds on the board to which the other moved the reading', async () => {
  await yard.beginRound();
  const takenAt = '2026-05-10T17:00:00.000Z';
  const file = await elsewhere((theirs) => theirs.amendments.amendReading(1, 'takenAt', takenAt, yard.now()));
  await move();
  await bringIn(file, 'mine');
  const [there] = (await yard.query('boards.get', { id: yard.boards[1]!.id })).readings;
  expect(there).toMatchObject({ takenAt, excluded: null });
});

test.each<[Side, string, string | null]>([
  ['mine', 'moved', null],
  ['theirs', 'defect', 'unmoved'],
])(
  'moved here and excluded there, of which %s is chosen: it counts on one board at most',
  async (rest, here, there) => {
    await yard.beginRound();
    const file = await elsewhere((theirs) =>
      theirs.amendments.exclude('reading', 1, { code: 'defect' }, yard.now()),
    );
    await move();
    await bringIn(file, rest);
    expect(await on(0)).toMatchObject([{ why: here }]);
    expect(await on(1)).toMatchObject([{ why: there }]);
  },
);

/** The yard as an export of everything. */
async function exported(): Promise<string> {
  const [from, target] = ['yard.sqlite', 'yard.json'].map((name) => join(newFolder(), name)) as [
    string,
    string,
  ];
  writeFileSync(from, await downloaded(yard, await yard.command('backups.beginDownload', {})));
  const display = { locale: 'en-US', timeZone: 'UTC', units: 'metric', today: null } as const;
  const what = { from, pictures: picturesBeside(from), target, display, nowAt: yard.now() };
  writeExport({ ...what, kind: 'everything' }, english, () => undefined);
  return target;
}

test('what was corrected and moved goes out as JSON and comes in again', async () => {
  await yard.beginRound();
  const [reading] = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
  await yard.command('readings.correct', {
    readingId: reading!.id,
    corrected: { raw: 14.2, woodTempC: null },
    shown: { raw: 12.4, unit: 'pct', woodTempC: 20 },
  });
  await move();
  const file = join(newFolder(), 'again.sqlite');
  makeYardOfJson(await exported(), file, () => undefined);
  const again = openYard(file);
  const readings = yard.boards.flatMap(({ id }) => again.readings.takenOn(id, reading!.roundId));
  again.close();
  expect(readings).toMatchObject([
    { raw: 14.2, savedRaw: 12.4, woodTempC: null, excluded: { code: 'moved' }, movedTo: { code: 'WAL-02' } },
    { raw: 14.2, savedRaw: 12.4, woodTempC: null, excluded: null, movedFrom: { code: 'WAL-01' } },
  ]);
});

test('of a reading that both corrected, it is asked again once the answer is undone', async () => {
  await yard.beginRound();
  const file = await elsewhere((theirs) => theirs.amendments.amendReading(1, 'raw', 14.2, yard.now()));
  await yard.command('readings.correct', {
    readingId: 1,
    corrected: { raw: 15.1 },
    shown: { raw: 12.4, unit: 'pct', woodTempC: 20 },
  });
  const look = () => yard.query('exchange.look', { file, work: null });
  const asked = await look();
  expect(asked).toMatchObject({ clashCount: 1, added: { amendments: 1 } });
  for (let turn = 0; turn < 2; turn++) {
    await bringIn(file, 'theirs');
    expect(await on(0)).toMatchObject([{ raw: 14.2 }]);
    const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
    await yard.command('acts.undo', { act: acts[0]!.id });
    expect(await on(0)).toMatchObject([{ raw: 15.1 }]);
    expect(await look()).toEqual(asked);
  }
});

const twoBoards = async () => {
  const [third] = await yard.command('boards.add', [yard.board('WAL-03')]);
  await yard.beginRound();
  return third!.id;
};
const moveIn = (theirs: Yard, boardId: number) => {
  const reading = theirs.readings.get(1)!;
  const { id, uuid, fromUuid } = theirs.readings.saveOn(reading, { ...reading, boardId });
  theirs.amendments.amendReading(id, 'movedFrom', fromUuid, yard.now());
  theirs.amendments.exclude('reading', 1, { code: 'moved', to: uuid }, yard.now());
};

test('moved to another board in each: both boards are named, and it counts on the chosen', async () => {
  const third = await twoBoards();
  const file = await elsewhere((theirs) => moveIn(theirs, third));
  await move();
  const { clashes } = await yard.query('exchange.look', { file, work: null });
  expect(clashes).toHaveLength(1);
  const { record, fields } = clashes[0]!;
  expect(say(record)).toBe('Reading 12.4% of board WAL-01');
  expect(
    fields.map((field) => [field.label, field.mine, field.theirs].map((each) => say(each as Message))),
  ).toEqual([['Reading', '12.4% on WAL-02', '12.4% on WAL-03']]);
  await bringIn(file, 'theirs');
  expect(await on(1)).toMatchObject([{ why: 'unmoved' }]);
  const { readings } = await yard.query('boards.get', { id: third });
  expect(readings).toMatchObject([{ raw: 12.4, excluded: null }]);
});

test('the same move in both is no question, and it counts once', async () => {
  await yard.beginRound();
  const file = await elsewhere((theirs) => moveIn(theirs, yard.boards[1]!.id));
  const { spot, spotIndex } = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings[0]!;
  await move();
  const there = (await yard.query('boards.get', { id: yard.boards[1]!.id })).readings[0]!;
  expect([there.spot, there.spotIndex]).toEqual([spot, spotIndex]);
  expect(await yard.query('exchange.look', { file, work: null })).toMatchObject({ clashCount: 0, edited: 0 });
  await bringIn(file, 'mine');
  expect(await on(1)).toMatchObject([{ why: null }]);
  expect(await yard.query('exchange.look', { file, work: null })).toMatchObject({ clashCount: 0, added: {} });
});

test.each([
  ['from itself', [0, 0]],
  ['from each other', [1, 0]],
])('a file in which readings are moved %s is refused', async (_, from) => {
  const { id: roundId } = await yard.beginRound();
  const [board] = yard.boards;
  await yard.command('rounds.saveTyped', {
    roundId,
    boardId: board!.id,
    spotIndex: 1,
    newestReadingId: null,
    raw: 13,
  });
  const file = await exported();
  const everything = JSON.parse(readFileSync(file, 'utf8')) as {
    readings: { uuid: string }[];
    amendments: object[];
  };
  const nothing = { ovenCheck: null, ovenWeight: null, sampleCut: null, sampleWeight: null, at: yard.now() };
  for (const [index, other] of from.entries()) {
    const [reading, value] = [index, other].map((at) => everything.readings[at]!.uuid);
    everything.amendments.push({ uuid: crypto.randomUUID(), ...nothing, reading, field: 'movedFrom', value });
  }
  writeFileSync(file, JSON.stringify(everything));
  expect(await yard.refusal('exchange.look', { file, work: null })).toBe(
    'In this file, the moves of a reading form a loop. Nothing was changed. Export the file again.',
  );
});

describe('moved to a board that the other deleted', () => {
  const shown = async (id: number) =>
    (await yard.query('boards.get', { id })).readings.map(({ raw, excluded, note }) => [
      raw,
      excluded && 'code' in excluded ? excluded.code : null,
      note,
    ]);
  const deleteBoard = (theirs: Yard, id: number) =>
    theirs.boards.archive([id], yard.now(), { code: 'deleted', note: '' });
  const moveOn = async (readingId: number, boardId: number): Promise<number> => {
    await yard.command('readings.moveToBoard', { readingId, boardId, spotIndex: null, scope: 'reading' });
    const { readings } = await yard.query('boards.get', { id: boardId });
    return readings.find(({ excluded }) => excluded === null)!.id;
  };

  test('it is said where it goes, and it goes back there with what was said of it, or stays', async () => {
    const third = await twoBoards();
    const file = await elsewhere((theirs) => deleteBoard(theirs, third));
    const there = await moveOn(1, third);
    const subject = { kind: 'reading', id: there } as const;
    await yard.command('notes.set', { subject, note: 'By the knot', shown: '' });
    await yard.command('readings.correct', {
      readingId: there,
      corrected: { raw: 14.2 },
      shown: { raw: 12.4, unit: 'pct', woodTempC: 20 },
    });
    const { clashes } = await yard.query('exchange.look', { file, work: null });
    expect(clashes.map(({ theirs }) => theirs.map((words) => say(words)))).toEqual([
      ['Deleted on Jun 1, 2026.', 'The reading that was moved to it goes back to WAL-01.'],
    ]);
    await bringIn(file, 'theirs');
    expect(await shown(yard.boards[0]!.id)).toEqual([[14.2, null, 'By the knot']]);
    await expect
      .poll(async () => (await yard.query('boards.get', { id: yard.boards[0]!.id })).board.latest)
      .not.toBeNull();
    const again = await yard.query('exchange.look', { file, work: null });
    expect(again).toMatchObject({ clashCount: 0, edited: 0, added: {} });
    // That undone, it is where it was; and there it stays where that is chosen.
    const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
    await yard.command('acts.undo', { act: acts[0]!.id });
    expect(await shown(third)).toEqual([[14.2, null, 'By the knot']]);
    await bringIn(file, 'mine');
    expect(await shown(third)).toEqual([[14.2, null, 'By the knot']]);
    expect(await shown(yard.boards[0]!.id)).toMatchObject([[12.4, 'moved', undefined]]);
  });

  test('it goes back as far as a board is there, and no further', async () => {
    const third = await twoBoards();
    const file = await elsewhere((theirs) => deleteBoard(theirs, third));
    await moveOn(await moveOn(1, yard.boards[1]!.id), third);
    await bringIn(file, 'theirs');
    expect(await on(0)).toMatchObject([{ why: 'moved' }]);
    expect(await on(1)).toMatchObject([{ why: null }]);
  });

  test('of one excluded there, that holds where it goes back to', async () => {
    const third = await twoBoards();
    const file = await elsewhere((theirs) => deleteBoard(theirs, third));
    await yard.command('readings.exclude', { readingId: await moveOn(1, third), why: { code: 'defect' } });
    await bringIn(file, 'theirs');
    expect(await on(0)).toMatchObject([{ why: 'defect' }]);
  });

  test('the depth that a person gave it there goes back with it', async () => {
    const third = await twoBoards();
    const file = await elsewhere((theirs) => deleteBoard(theirs, third));
    const readingId = await moveOn(1, third);
    const of = async (id: number) => (await yard.query('boards.get', { id })).readings[0]!;
    const { spot, depthFrom } = await of(third);
    const shown = { depthMm: spot.depthMm, depthFrom };
    yard.later(60_000);
    await yard.command('readings.setDepth', { readingId, depthMm: 3, shown, wholeRound: false });
    await bringIn(file, 'theirs');
    expect(await of(yard.boards[0]!.id)).toMatchObject({
      excluded: null,
      spot: { depthMm: 3 },
      depthFrom: 'person',
    });
  });

  test('readings that somebody moved in a circle in a yard file keep nobody from bringing it in', async () => {
    const third = await twoBoards();
    const file = await elsewhere((theirs) => {
      moveIn(theirs, third);
      const [there] = theirs.readings.takenOn(third, theirs.readings.roundsOfBoard(third)[0]!);
      const { id, uuid, fromUuid } = theirs.readings.saveOn(there!, { ...there!, boardId: third });
      theirs.amendments.amendReading(id, 'movedFrom', fromUuid, yard.now());
      theirs.amendments.amendReading(there!.id, 'movedFrom', uuid, yard.now());
      theirs.amendments.exclude('reading', there!.id, { code: 'moved', to: uuid }, yard.now());
      theirs.amendments.exclude('reading', id, { code: 'moved', to: fromUuid }, yard.now());
    });
    await yard.command('boards.delete', { boardIds: [third] });
    await bringIn(file, 'mine');
    const { readings } = await yard.query('boards.get', { id: third });
    expect(readings.filter(({ excluded }) => excluded === null)).toEqual([]);
  });
});
