/** Another file of the yard, brought in by a window: what is new, what both changed, and undoing it. */
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readBackupName } from '../../../electron/store/backup-name.ts';
import { packPictures } from '../../../electron/store/packed-pictures.ts';
import type { Side } from '../../../shared-core/contract/exchange.ts';
import { onlyNamed } from '../../../shared-core/wood/species/species.ts';
import { addPicture, pictureFile } from '../app/a-picture.ts';
import { say } from '../app/a-window.ts';
import { doing } from '../app/seen-yard.ts';
import { withYardOfTwo, yard } from '../app/yard-of-two.ts';
import { newFolder, undoAct } from './a-filled-yard.ts';
import { downloaded } from './downloaded.ts';
import { elsewhere } from './elsewhere.ts';

// Real threads on a busy computer.
withYardOfTwo();

const region = { locale: 'en-US', timeZone: 'America/Chicago' };
const codes = async () =>
  (await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 50 })).rows.map(
    ({ code, note }) => [code, note],
  );

const [first, second] = [0, 1];
const editHere = (which: number, changed: object) =>
  yard.command('boards.edit', { id: yard.boards[which]!.id, basedOn: 1, changed });

const what = (file: string, rest: Side = 'mine', others: string[] = []) => ({
  file,
  fileName: '/folder/theirs.sqlite',
  rest,
  others,
  work: null,
});
async function bringIn(file: string, rest: Side = 'mine', others: string[] = []): Promise<void> {
  await yard.command('exchange.merge', what(file, rest, others));
  await yard.query('yard.info', {});
}

test('what is new comes in, what one changed holds, and of what both changed the chosen', async () => {
  const file = await elsewhere((theirs) => {
    const [one, two] = yard.boards.map(({ id }) => theirs.boards.get(id)!);
    theirs.boards.edit({ id: one!.id, basedOn: 1, changed: { note: 'theirs', log: 'L9' } });
    theirs.boards.edit({ id: two!.id, basedOn: 1, changed: { note: 'theirs, too' } });
    theirs.boards.add(
      { ...yard.board('WAL-03'), driedBy: 'air', thicknessQuarters: null },
      yard.place.id,
      yard.now(),
    );
    theirs.species.add({ ...onlyNamed, id: 'elm-local', name: 'Local elm', group: 'Elms' });
  });
  await editHere(first, { note: 'mine' });
  await editHere(second, { widthMm: 190 });
  await yard.command('boards.add', [yard.board('WAL-03')]);

  const found = await yard.query('exchange.look', { file, work: null });
  expect(found).toMatchObject({
    added: { boards: 1, moves: 1, species: 1 },
    clashCount: 1,
    clashes: [
      {
        record: { code: 'act.record.board', facts: { recordName: 'WAL-01' } },
        fields: [{ label: { code: 'board.note' }, mine: 'mine', theirs: 'theirs' }],
      },
    ],
    renamed: [{ tableName: 'boards', from: 'WAL-03', to: 'WAL-03-2' }],
  });
  // Looking changed nothing.
  expect(await codes()).toEqual([
    ['WAL-01', 'mine'],
    ['WAL-02', ''],
    ['WAL-03', ''],
  ]);

  const others = [found.clashes[0]!.id];
  await bringIn(file, 'mine', others);
  expect(await codes()).toEqual([
    ['WAL-01', 'theirs'],
    ['WAL-02', 'theirs, too'],
    ['WAL-03', ''],
    ['WAL-03-2', ''],
  ]);
  const { board } = await yard.query('boards.get', { id: yard.boards[second]!.id });
  expect(board.widthMm).toBe(190);
  expect(readdirSync(join(yard.dataDir, 'transfers'))).toEqual([]);
  expect(await yard.query('exchange.look', { file, work: null })).toMatchObject({ added: {}, clashCount: 0 });

  const { restored } = await yard.query('backups.state', {});
  expect(restored).toMatchObject({ wasMerged: true });
  await yard.command('backups.undoRestore', {});
  await yard.query('yard.info', {});
  expect(await codes()).toEqual([
    ['WAL-01', 'mine'],
    ['WAL-02', ''],
    ['WAL-03', ''],
  ]);
});

describe('pictures of the other yard', () => {
  const bytes = pictureFile('board-end.png');
  const hash = createHash('sha256').update(bytes).digest('hex');
  const board = () => ({ kind: 'board', id: yard.boards[first]!.id }) as const;
  const pictured = () =>
    elsewhere((theirs) => {
      theirs.pictures.add(board(), {
        contentHash: hash,
        mediaType: 'image/png',
        bytes: bytes.length,
        caption: 'Theirs',
        addedAt: yard.now(),
      });
      theirs.pictures.setThumbnail(hash, 'AAAA');
    });
  const lay = (folder: string) => {
    mkdirSync(folder);
    writeFileSync(join(folder, hash), bytes);
  };

  test.each<[string, (file: string) => Promise<string>]>([
    [
      'beside it',
      async (file) => {
        lay(`${file}-pictures`);
        return file;
      },
    ],
    [
      'in it, as in a copy',
      async (file) => {
        lay(`${file}-pictures`);
        const copy = join(newFolder(), 'copy.sqlite');
        copyFileSync(file, copy);
        packPictures(file, copy);
        return copy;
      },
    ],
    [
      'beside the backups that it is one of',
      async (file) => {
        await yard.command('backups.make', {});
        const [named] = await yard.query('backups.list', {});
        const backup = join(newFolder(), basename(named!.file));
        copyFileSync(file, backup);
        const { yardId } = readBackupName(basename(backup))!;
        lay(join(dirname(backup), `pintally-pictures-${yardId}`));
        return backup;
      },
    ],
  ])('come with it where they are %s', async (_, made) => {
    const file = await made(await pictured());
    expect(await yard.query('exchange.look', { file, work: null })).toMatchObject({
      added: { pictures: 1 },
      missingPictures: 0,
    });
    await bringIn(file);
    const [came] = await yard.query('pictures.list', { subject: board() });
    expect(came).toMatchObject({ caption: 'Theirs', thumbnail: 'AAAA' });
    const { base64 } = await yard.query('pictures.read', { id: came!.id, offset: 0 });
    expect(Buffer.from(base64, 'base64')).toEqual(bytes);
    expect(readdirSync(join(yard.dataDir, 'transfers'))).toEqual([]);
  });

  test('that are nowhere or damaged are counted before, and all else comes in', async () => {
    const file = await pictured();
    const look = () => yard.query('exchange.look', { file, work: null });
    expect(await look()).toMatchObject({ added: { pictures: 1 }, missingPictures: 1 });
    lay(`${file}-pictures`);
    writeFileSync(join(`${file}-pictures`, hash), 'not what was saved');
    expect(await look()).toMatchObject({ missingPictures: 1 });
    await bringIn(file);
    const [came] = await yard.query('pictures.list', { subject: board() });
    expect(came).toMatchObject({ caption: 'Theirs' });
    expect(await yard.refusal('pictures.read', { id: came!.id, offset: 0 })).toMatch('is missing');
  });

  test('are in an export, and come back from it where they are missing', async () => {
    await addPicture(yard, board());
    const offered = await yard.command('exchange.beginExport', { kind: 'everything', region, work: null });
    const file = join(newFolder(), 'yard.json');
    writeFileSync(file, await downloaded(yard, offered));
    const look = () => yard.query('exchange.look', { file, work: null });
    expect(await look()).toMatchObject({ missingPictures: 0, foundPictures: 0 });
    rmSync(join(yard.dataDir, 'yard.sqlite-pictures'), { recursive: true });
    expect(await look()).toMatchObject({ missingPictures: 0, foundPictures: 1 });
    await bringIn(file);
    const [came] = await yard.query('pictures.list', { subject: board() });
    const { base64 } = await yard.query('pictures.read', { id: came!.id, offset: 0 });
    expect(base64.length).toBeGreaterThan(100);
  });
});

const lineOfNewest = async (): Promise<string> => {
  const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
  return say(acts[0]!.line);
};

test('it is one act of the list, which can be undone and redone there', async () => {
  const file = await elsewhere((theirs) => {
    const [one] = yard.boards.map(({ id }) => theirs.boards.get(id)!);
    theirs.boards.edit({ id: one!.id, basedOn: 1, changed: { note: 'theirs' } });
    theirs.boards.add(
      { ...yard.board('WAL-03'), driedBy: 'air', thicknessQuarters: null },
      yard.place.id,
      yard.now(),
    );
  });
  await bringIn(file);
  expect(await lineOfNewest()).toBe('Merged from theirs.sqlite: 1 board, 1 move, and 1 record changed.');
  const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
  await yard.command('acts.undo', { act: acts[0]!.id });
  expect(await codes()).toEqual([
    ['WAL-01', ''],
    ['WAL-02', ''],
  ]);
  await yard.command('acts.redo', { act: acts[0]!.id });
  expect(await codes()).toEqual([
    ['WAL-01', 'theirs'],
    ['WAL-02', ''],
    ['WAL-03', ''],
  ]);
});

test('the same file again leaves no act, and what was only compared is told as that', async () => {
  const file = await elsewhere((theirs) => {
    const { id } = theirs.boards.get(yard.boards[first]!.id)!;
    theirs.boards.edit({ id, basedOn: 1, changed: { note: 'theirs' } });
  });
  await editHere(first, { note: 'mine' });
  await bringIn(file);
  const compared = 'Compared with theirs.sqlite. Nothing was changed.';
  expect(await lineOfNewest()).toBe(compared);
  await editHere(second, { note: 'later' });
  const before = await lineOfNewest();
  expect(await yard.refusal('exchange.merge', what(file))).toBe(
    'Your yard has everything in this file. Nothing was changed.',
  );
  expect(await lineOfNewest()).toBe(before);
  expect(readdirSync(join(yard.dataDir, 'transfers'))).toEqual([]);
});

test('what was done here before it is not in the way of undoing it', async () => {
  const { id: roundId } = await yard.beginRound();
  const boardId = yard.boards[first]!.id;
  const { act } = await doing('rounds.saveTyped', {
    roundId,
    boardId,
    spotIndex: 1,
    newestReadingId: null,
    raw: 12,
  });
  const newest = async () => (await yard.query('boards.get', { id: boardId })).readings.at(-1)!;
  // They undo the reading that is excluded here.
  const file = await elsewhere((theirs) => undoAct(theirs, act, yard.now()));
  await yard.command('readings.exclude', { readingId: (await newest()).id, why: { code: 'knot' } });
  await bringIn(file, 'theirs');
  expect((await newest()).raw).not.toBe(12);
  const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
  await yard.command('acts.undo', { act: acts[0]!.id });
  expect(await newest()).toMatchObject({ raw: 12, excluded: { code: 'knot' } });
  await yard.command('acts.redo', { act: acts[0]!.id });
  expect((await newest()).raw).not.toBe(12);
});

test('what one deleted and the other left alone stays deleted; what the other needs comes back', async () => {
  const { id } = await yard.command('places.add', {
    name: 'Kiln',
    kind: 'heated-room',
    air: Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.3 })),
  });
  const file = await elsewhere((theirs) => {
    theirs.moves.add({ boardId: yard.boards[first]!.id, placeId: id, since: yard.now(), datedBy: 'clock' });
  });
  const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
  await yard.command('acts.undo', { act: acts[0]!.id });
  await bringIn(file);
  const { board } = await yard.query('boards.get', { id: yard.boards[first]!.id });
  expect(board.placeName).toBe('Kiln');
});

test('a stack that one closed and where the other has boards is open again, with its place', async () => {
  const file = await elsewhere((theirs) => {
    const stack = theirs.stacks.get(yard.stack.id)!;
    theirs.boards.archive(
      yard.boards.map(({ id }) => id),
      yard.now(),
      { code: 'sold', note: '' },
    );
    theirs.stacks.edit({ id: stack.id, basedOn: stack.version, changed: { closedAt: yard.now() } });
    const place = theirs.places.get(yard.place.id)!;
    theirs.places.edit({ id: place.id, basedOn: place.version, changed: { closedAt: yard.now() } });
  });
  await yard.command('boards.add', [yard.board('WAL-03')]);
  await bringIn(file);
  expect(await yard.query('stacks.list', {})).toMatchObject([{ name: 'Walnut', boards: 1 }]);
  expect(await yard.query('places.list', {})).toMatchObject([{ name: 'Shop' }]);
});

test('an export of everything comes into an empty yard, and a bad file changes nothing', async () => {
  await yard.beginRound();
  const file = join(newFolder(), 'yard.json');
  const offered = await yard.command('exchange.beginExport', { kind: 'everything', region, work: null });
  expect(offered.fileName).toBe('pintally-everything-2026-06-01.json');
  const json = await downloaded(yard, offered);
  writeFileSync(file, json);
  expect(await yard.query('exchange.look', { file, work: null })).toMatchObject({ added: {}, clashCount: 0 });
  writeFileSync(file, json.subarray(0, json.length / 2));
  expect(await yard.refusal('exchange.look', { file, work: null })).toContain('ends too early');
  expect(await yard.refusal('exchange.merge', what(file))).toContain('ends too early');
  copyFileSync(process.execPath, file);
  expect(await yard.refusal('exchange.look', { file, work: null })).toContain(
    'not a yard file or a Pintally export',
  );
  expect(await yard.refusal('exchange.look', { file: '/nowhere.json', work: null })).not.toBe(
    'it was allowed',
  );
  expect(await codes()).toEqual([
    ['WAL-01', ''],
    ['WAL-02', ''],
  ]);
});

test('a damaged yard file is refused without the path of a copy', async () => {
  const file = await elsewhere(() => undefined);
  const bytes = readFileSync(file);
  // The pages behind the first: its header is right.
  bytes.fill(0x5a, 4096 * 3, 4096 * 12);
  writeFileSync(file, bytes);
  expect(await yard.refusal('exchange.look', { file, work: null })).toBe(
    'That file is damaged. Your yard is unchanged. Choose another file or backup.',
  );
});

describe('a file that is no yard is refused with a sentence, however large', () => {
  const head = '{"format":"pintally-yard","version":1,"exportedAt":"2026-01-01T00:00:00.000Z"';
  const gigabyte = 1024 ** 3;
  test.each<[string, string | Buffer, number | null, string]>([
    ['1 GB of nothing', '', gigabyte, 'This file is not a yard file or a Pintally export.'],
    ['1 GB that begins as a yard file', 'SQLite format 3\0', gigabyte, 'That file is'],
    [
      'an endless record',
      `${head},"species":[{"a":"${'x'.repeat(3e6)}`,
      null,
      'A record in this file is too long.',
    ],
    ['an endless name', `{"${'x'.repeat(3e6)}`, null, 'A record in this file is too long.'],
    [
      'records within records',
      `${head},"species":[${'{"a":'.repeat(1e6)}`,
      null,
      'A record in this file is too long.',
    ],
    ['blanks without an end', `${head},"species":[${' '.repeat(3e6)}`, null, 'The file ends too early'],
    ['a packed file', 'PK\x03\x04 and more', null, 'This is a packed file or a spreadsheet.'],
    [
      'UTF-16',
      Buffer.from(`\uFEFF${head}}`, 'utf16le'),
      null,
      'This file is not a yard file or a Pintally export.',
    ],
  ])('%s', async (_, content, sizeBytes, sentence) => {
    const file = join(newFolder(), 'other.json');
    writeFileSync(file, content);
    if (sizeBytes !== null) truncateSync(file, sizeBytes);
    expect(await yard.refusal('exchange.look', { file, work: null })).toContain(sentence);
  });
});

test('once the act is undone, its question and what it brought are there again', async () => {
  const file = await elsewhere((theirs) => {
    const [one, two] = yard.boards.map(({ id }) => theirs.boards.get(id)!);
    theirs.boards.edit({ id: one!.id, basedOn: 1, changed: { log: 'theirs' } });
    theirs.boards.edit({ id: two!.id, basedOn: 1, changed: { note: 'theirs' } });
    theirs.boards.add(
      { ...yard.board('WAL-03'), driedBy: 'air', thicknessQuarters: null },
      yard.place.id,
      yard.now(),
    );
  });
  await editHere(first, { log: 'mine' });
  const look = () => yard.query('exchange.look', { file, work: null });
  const asked = await look();
  expect(asked).toMatchObject({ clashCount: 1, edited: 1, added: { boards: 1 } });
  const log = async () => (await yard.query('boards.get', { id: yard.boards[first]!.id })).board.log;
  for (const [rest, chosen] of [
    ['mine', 'mine'],
    ['theirs', 'theirs'],
  ] as const) {
    await bringIn(file, rest);
    expect(await log()).toBe(chosen);
    expect(await look()).toMatchObject({ clashCount: 0, edited: 0, added: {} });
    const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
    await yard.command('acts.undo', { act: acts[0]!.id });
    expect(await log()).toBe('mine');
    expect(await look()).toEqual(asked);
  }
});
