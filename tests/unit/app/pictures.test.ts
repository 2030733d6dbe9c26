/** Pictures of a real yard file, by the app as it runs. */
import { existsSync, mkdtempSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { TRANSFER_PART_BYTES } from '../../../shared-core/contract/backups.ts';
import type { Subject } from '../../../shared-core/contract/notes.ts';
import type { NewPicture } from '../../../shared-core/contract/pictures.ts';
import { MOST_PICTURE_BYTES } from '../../../shared-core/pictures/picture.ts';
import { addPicture, pictureFile, takePicture } from './a-picture.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// Real threads on a busy computer.
withYardOfTwo();

const folder = () => join(yard.dataDir, 'yard.sqlite-pictures');
const board = (): Subject => ({ kind: 'board', id: yard.boards[0]!.id });
const pictures = (subject = board()) => yard.query('pictures.list', { subject });
const read = async (id: number) =>
  Buffer.from((await yard.query('pictures.read', { id, offset: 0 })).base64, 'base64');
const damage = (file: string) => writeFileSync(file, Buffer.from('not what was saved'));

describe('a picture', () => {
  test('is of a board, a stack, a round or a reading, and is read back as it was', async () => {
    const round = await yard.beginRound();
    const subjects: Subject[] = [
      board(),
      { kind: 'stack', id: yard.stack.id },
      { kind: 'round', id: round.id },
      { kind: 'reading', id: 1 },
    ];
    for (const subject of subjects) {
      const { id } = await addPicture(yard, subject);
      expect(await pictures(subject)).toMatchObject([
        { id, caption: 'Blue stain', mediaType: 'image/jpeg', addedAt: yard.now() },
      ]);
      expect(await read(id)).toEqual(pictureFile('board-end.jpg'));
    }
    // Four pictures, one file.
    expect(readdirSync(folder())).toHaveLength(1);
  });

  test('is in a folder and a file that only this user can read', async () => {
    const { contentHash } = await addPicture(yard, board());
    expect(statSync(folder()).mode & 0o777).toBe(0o700);
    expect(statSync(join(folder(), contentHash)).mode & 0o777).toBe(0o600);
  });

  test('that is none is refused, and nothing of it stays', async () => {
    await expect(takePicture(yard, Buffer.from('<svg/>'))).rejects.toThrow(
      'This is not a JPEG, PNG, or WebP picture. It was not saved. Choose another file.',
    );
    expect(existsSync(folder())).toBe(false);
  });

  test('is refused where it is larger than 25 MB', async () => {
    const sizeBytes = MOST_PICTURE_BYTES + 1;
    const { upload, file } = await yard.command('backups.beginUpload', { sizeBytes });
    for (let offset = 0; offset < sizeBytes; offset += TRANSFER_PART_BYTES) {
      const part = Buffer.alloc(Math.min(TRANSFER_PART_BYTES, sizeBytes - offset));
      await yard.command('backups.addToUpload', { upload, offset, base64: part.toString('base64') });
    }
    expect(await yard.refusal('pictures.take', { file })).toMatch('larger than 25 MB');
  });

  test('is taken of no file but the one that the window uploaded', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'pintally-')), 'mine.jpg');
    writeFileSync(file, pictureFile('board-end.jpg'));
    expect(await yard.refusal('pictures.take', { file })).toMatch('did not finish');
  });

  test('is not added twice to one thing', async () => {
    await addPicture(yard, board());
    await expect(addPicture(yard, board())).rejects.toThrow('This picture is here already.');
    expect(await pictures()).toHaveLength(1);
  });

  test('is added with others as one act, or none of them is', async () => {
    const names = ['board-end.jpg', 'board-end.png', 'board-end.webp'];
    const added: NewPicture[] = [];
    for (const name of names) {
      const contentHash = await takePicture(yard, pictureFile(name));
      added.push({ contentHash, caption: name, thumbnail: null });
    }
    const add = (pictures: NewPicture[]) => yard.refusal('pictures.add', { subject: board(), pictures });
    expect(await add([...added, added[0]!])).toMatch('here already');
    expect(await add([...added, { ...added[0]!, contentHash: '0'.repeat(64) }])).toMatch('did not finish');
    expect(await pictures()).toEqual([]);
    await yard.command('pictures.add', { subject: board(), pictures: added });
    expect((await pictures()).map(({ caption }) => caption)).toEqual(names);
  });

  test('gets another caption, unless that was changed meanwhile', async () => {
    const { id } = await addPicture(yard, board());
    await yard.command('pictures.edit', { id, basedOn: 1, changed: { caption: 'North end' } });
    expect(await pictures()).toMatchObject([{ caption: 'North end', version: 2 }]);
    const late = await yard.answer('pictures.edit', { id, basedOn: 1, changed: { caption: 'South end' } });
    expect(late).toMatchObject({ ok: false, current: { caption: 'North end' } });
  });

  test('that is deleted comes back by undoing it, also its adding', async () => {
    const { id } = await addPicture(yard, board());
    const { act } = await yard.command('pictures.delete', { id });
    expect(await pictures()).toEqual([]);
    await yard.command('acts.undo', { act });
    const [again] = await pictures();
    expect(again).toMatchObject({ caption: 'Blue stain' });
    expect(again?.thumbnail).not.toBeNull();
    expect(await read(again!.id)).toEqual(pictureFile('board-end.jpg'));
  });

  test.each(['missing', 'damaged'] as const)(
    'whose file is %s says so, and all else is shown',
    async (how) => {
      const { id, contentHash } = await addPicture(yard, board());
      if (how === 'missing') rmSync(folder(), { recursive: true });
      else damage(join(folder(), contentHash));
      expect(await yard.refusal('pictures.read', { id, offset: 0 })).toMatch(
        how === 'missing' ? /is missing/ : /damaged the file/,
      );
      expect((await yard.query('boards.get', board())).board.code).toBe(yard.boards[0]!.code);
      expect(await pictures()).toMatchObject([{ id, caption: 'Blue stain' }]);
      // Added once more, it is whole again.
      await takePicture(yard, pictureFile('board-end.jpg'));
      expect(await read(id)).toEqual(pictureFile('board-end.jpg'));
    },
  );
});

describe('the file of a deleted picture', () => {
  const unused = () => join(folder(), 'unused');
  const openAgain = async () => {
    await yard.command('yard.openDemo', {});
    await yard.command('yard.openOwn', {});
  };

  test('stays for a month, and comes back with the picture', async () => {
    const { id, contentHash } = await addPicture(yard, board());
    const { act } = await yard.command('pictures.delete', { id });
    await openAgain();
    await expect.poll(() => existsSync(join(unused(), contentHash))).toBe(true);
    await yard.command('acts.undo', { act });
    expect(await read((await pictures())[0]!.id)).toEqual(pictureFile('board-end.jpg'));
    await openAgain();
    await expect.poll(() => existsSync(join(folder(), contentHash))).toBe(true);
  });

  test('is deleted after it', async () => {
    const { id, contentHash } = await addPicture(yard, board());
    await yard.command('pictures.delete', { id });
    await openAgain();
    const file = join(unused(), contentHash);
    await expect.poll(() => existsSync(file)).toBe(true);
    const monthAgo = Date.parse(yard.now()) / 1000 - 31 * 86_400;
    utimesSync(file, monthAgo, monthAgo);
    await openAgain();
    await expect.poll(() => existsSync(file)).toBe(false);
  });
});

describe('backups', () => {
  const backup = async () => {
    await yard.command('backups.make', {});
    return (await yard.query('backups.list', {}))[0]!;
  };
  /** As on another computer, or after the disk was lost. */
  const losePictures = () => rmSync(folder(), { recursive: true });

  test('have the pictures once for all of them, and are restored with them', async () => {
    const { id, contentHash } = await addPicture(yard, board());
    const first = await backup();
    expect(first.contents).toMatchObject({ pictures: 1 });
    await backup();
    const [beside] = readdirSync(dirname(first.file)).filter((name) => name.startsWith('pintally-pictures-'));
    const saved = join(dirname(first.file), beside!);
    expect(readdirSync(saved)).toEqual([contentHash]);
    expect(statSync(saved).mode & 0o777).toBe(0o700);
    await yard.command('pictures.delete', { id });
    losePictures();
    const look = await yard.query('backups.look', { file: first.file });
    expect(look.missing).toMatchObject({ pictures: 0 });
    await yard.command('backups.restore', { file: first.file });
    await yard.query('yard.info', {});
    expect(await read((await pictures())[0]!.id)).toEqual(pictureFile('board-end.jpg'));
  });

  test('say of pictures that came later that they would be missing', async () => {
    const { file } = await backup();
    await addPicture(yard, board());
    expect((await yard.query('backups.look', { file })).missing).toMatchObject({ pictures: 1 });
  });

  test('are made where a picture is damaged, and keep the one that they have', async () => {
    const { contentHash } = await addPicture(yard, board());
    const { file } = await backup();
    damage(join(folder(), contentHash));
    await backup();
    await yard.command('backups.restore', { file });
    await yard.query('yard.info', {});
    expect(await read((await pictures())[0]!.id)).toEqual(pictureFile('board-end.jpg'));
  });

  test('no longer have a picture that is in none of them', async () => {
    const { id, contentHash } = await addPicture(yard, board());
    const { file } = await backup();
    await yard.command('pictures.delete', { id });
    rmSync(file);
    const next = await backup();
    const [beside] = readdirSync(dirname(next.file)).filter((name) => name.startsWith('pintally-pictures-'));
    expect(readdirSync(join(dirname(next.file), beside!))).not.toContain(contentHash);
  });

  test('a copy in one file has the pictures in it', async () => {
    await addPicture(yard, board());
    const file = join(mkdtempSync(join(tmpdir(), 'pintally-')), 'my yard.sqlite');
    await yard.command('backups.saveCopy', { file, replaces: false });
    expect(readdirSync(dirname(file))).toEqual(['my yard.sqlite']);
    losePictures();
    await yard.command('backups.restore', { file });
    await yard.query('yard.info', {});
    expect(await read((await pictures())[0]!.id)).toEqual(pictureFile('board-end.jpg'));
    // Not twice: neither stays in the yard file.
    const copied = statSync(file).size;
    expect(statSync(join(yard.dataDir, 'yard.sqlite')).size).toBeLessThanOrEqual(copied);
  });
});
