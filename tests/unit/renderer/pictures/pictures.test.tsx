// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, createEvent, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PicturesSheet } from '../../../../renderer/features/pictures/PicturesSheet.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { Dialog } from '../../../../renderer/ui/Dialog.tsx';
import { Conflict, Refusal } from '../../../../shared-core/contract/answer.ts';
import { MOST_PICTURES, type ShownPicture } from '../../../../shared-core/contract/pictures.ts';
import { MOST_PICTURE_BYTES } from '../../../../shared-core/pictures/picture.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

const subject = { kind: 'board', id: 7 } as const;
const place = { boardId: 7, stackId: 1, roundId: null };
const hash = (number: number): string => String(number).padStart(64, '0');

const aPicture = (id: number, more: Partial<ShownPicture> = {}): ShownPicture => ({
  id,
  version: 1,
  contentHash: hash(id),
  mediaType: 'image/jpeg',
  bytes: 3,
  caption: '',
  addedAt: '2026-11-03T09:00:00Z',
  thumbnail: 'AAAA',
  ...more,
});

const jpeg = (name: string, size = 3) => new File([new Uint8Array(size)], name, { type: 'image/jpeg' });

beforeEach(() => {
  forgetEverything();
  // jsdom draws nothing.
  vi.stubGlobal('createImageBitmap', async () => ({ width: 30, height: 20, close: () => undefined }));
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockReturnValue(null);
  URL.createObjectURL = () => 'blob:picture';
  URL.revokeObjectURL = () => undefined;
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

async function open(more: Parameters<typeof playMachine>[0] = {}, over: React.ReactNode = null) {
  let uploads = 0;
  const machine = playMachine({
    'backups.beginUpload': () => {
      uploads++;
      return { upload: crypto.randomUUID(), file: String(uploads) };
    },
    'backups.addToUpload': () => null,
    'backups.dropUpload': () => null,
    'pictures.take': ({ file }) => ({ contentHash: hash(100 + Number(file)) }),
    'pictures.add': ({ pictures }) => ({ place, ids: pictures.map((_, at) => 100 + at) }),
    'pictures.edit': () => ({ place }),
    'pictures.delete': () => ({ place, act: crypto.randomUUID() }),
    'pictures.read': () => ({ base64: 'AAAA' }),
    ...more,
  });
  render(
    <main>
      <input aria-label="Elsewhere" />
      <PicturesSheet subject={subject} recordName="A12" />
      {over}
    </main>,
  );
  // The list is here.
  await waitFor(() => expect(document.querySelector('.loading')).toBeNull());
  return { machine, user: userEvent.setup({ applyAccept: false }) };
}

const picker = () => document.querySelector<HTMLInputElement>('input[type=file]')!;
const told = () => useNotices.getState().notices.map(({ sentence }) => sentence);
const added = (machine: Awaited<ReturnType<typeof open>>['machine']) =>
  machine.inputsOf('pictures.add') as { pictures: { contentHash: string }[] }[];

function paste(target: Element, files: File[], text?: string): void {
  const event = createEvent.paste(target);
  Object.assign(event, { clipboardData: { files, types: [...(text ? ['text/plain'] : []), 'Files'] } });
  fireEvent(target, event);
}

describe('files', () => {
  test('that are chosen go in as one act, and each that cannot has its reason', async () => {
    const { machine, user } = await open({
      'pictures.take': ({ file }) => {
        if (file === '2') throw new Refusal(message('refusal.picture-unknown'));
        return { contentHash: hash(100 + Number(file)) };
      },
    });
    const huge = jpeg('huge.jpg');
    Object.defineProperty(huge, 'size', { value: MOST_PICTURE_BYTES + 1 });
    await user.upload(picker(), [jpeg('end.jpg'), jpeg('notes.txt'), huge, jpeg('stain.jpg')]);
    await waitFor(() => expect(told()).toEqual(['2 pictures added.']));
    expect(machine.inputsOf('pictures.add')).toEqual([
      {
        subject,
        pictures: [
          { contentHash: hash(101), caption: '', thumbnail: null },
          { contentHash: hash(103), caption: '', thumbnail: null },
        ],
      },
    ]);
    const notAdded = within(screen.getByRole('alert')).getAllByRole('listitem');
    expect(notAdded.map(({ textContent }) => textContent)).toEqual([
      'notes.txt This is not a JPEG, PNG, or WebP picture. It was not saved. Choose another file.',
      'huge.jpg This file is larger than 25 MB. It was not saved. Choose a smaller picture.',
    ]);
    await expectNoBarriers();
    expect(machine.inputsOf('backups.dropUpload')).toHaveLength(1);
  });

  test('that are there already, or beyond the most, do not go in', async () => {
    const pictures = Array.from({ length: MOST_PICTURES - 1 }, (_, at) => aPicture(at + 1));
    const { machine, user } = await open({
      'pictures.list': () => pictures,
      'pictures.take': ({ file }) => ({ contentHash: file === '1' ? hash(5) : hash(200) }),
    });
    await user.upload(picker(), [jpeg('again.jpg'), jpeg('last.jpg'), jpeg('more.jpg')]);
    await waitFor(() => expect(told()).toEqual(['Picture added.']));
    expect(added(machine)[0]?.pictures).toMatchObject([{ contentHash: hash(200) }]);
    const sentences = screen.getByRole('alert').textContent;
    expect(sentences).toMatch('again.jpg This picture is here already.');
    expect(sentences).toMatch('more.jpg At most 100 pictures fit here.');
  });

  test('that no one can draw are damaged', async () => {
    vi.stubGlobal('createImageBitmap', () => Promise.reject(new DOMException('not decoded')));
    const { machine, user } = await open();
    await user.upload(picker(), jpeg('end.jpg'));
    expect((await screen.findByRole('alert')).textContent).toMatch('end.jpg This picture is damaged');
    expect(added(machine)).toEqual([]);
  });

  test('are not added once the person cancels', async () => {
    let arrive = (): void => undefined;
    const { machine, user } = await open({
      'backups.addToUpload': () =>
        new Promise<null>((resolve) => {
          arrive = () => resolve(null);
        }),
    });
    await user.upload(picker(), [jpeg('end.jpg'), jpeg('stain.jpg')]);
    await user.click(await screen.findByRole('button', { name: 'Cancel' }));
    arrive();
    await waitFor(() => expect(told()).toEqual(['Stopped. No picture was added.']));
    expect(added(machine)).toEqual([]);
    expect(machine.inputsOf('backups.beginUpload')).toHaveLength(1);
  });

  test('of which the machine says that the disk is full stop there', async () => {
    const { machine, user } = await open({
      'pictures.take': () => {
        throw new Refusal(message('refusal.picture-no-room'));
      },
    });
    await user.upload(picker(), [jpeg('end.jpg'), jpeg('stain.jpg')]);
    await waitFor(() => expect(told()[0]).toMatch('The disk is full.'));
    expect(machine.inputsOf('pictures.take')).toHaveLength(1);
    expect(added(machine)).toEqual([]);
  });
});

describe('a picture that is pasted', () => {
  test('goes in wherever on the page the focus is', async () => {
    const { machine } = await open();
    paste(screen.getByLabelText('Elsewhere'), [jpeg('image.jpg')]);
    await waitFor(() => expect(added(machine)).toHaveLength(1));
  });

  test('is left to a field where it comes with text', async () => {
    const { machine } = await open();
    paste(screen.getByLabelText('Elsewhere'), [jpeg('cells.jpg')], '12.4');
    paste(screen.getByRole('main'), [new File(['a'], 'a.txt', { type: 'text/plain' })]);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(machine.inputsOf('backups.beginUpload')).toEqual([]);
  });

  test('is not taken under a dialog', async () => {
    const { machine } = await open(
      {},
      <Dialog title="Over it" onClose={() => undefined}>
        <input aria-label="On top" />
      </Dialog>,
    );
    paste(screen.getByLabelText('On top'), [jpeg('image.jpg')]);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(machine.inputsOf('backups.beginUpload')).toEqual([]);
  });
});

test('what is dropped anywhere goes in, and the browser does not open it', async () => {
  const { machine } = await open();
  const dataTransfer = { types: ['Files'], files: [jpeg('end.jpg'), jpeg('stain.jpg')] };
  expect(fireEvent.dragOver(screen.getByRole('main'), { dataTransfer })).toBe(false);
  expect(fireEvent.drop(screen.getByRole('main'), { dataTransfer })).toBe(false);
  await waitFor(() => expect(added(machine)[0]?.pictures).toHaveLength(2));
});

describe('the viewer', () => {
  const three = () => [aPicture(1), aPicture(2, { caption: 'Blue stain' }), aPicture(3)];

  test('shows one after the other by keys', async () => {
    const { user } = await open({ 'pictures.list': three });
    const tiles = within(screen.getByRole('list', { name: 'Pictures of A12' })).getAllByRole('button');
    expect(
      tiles.map((tile) => tile.textContent || within(tile).getByRole('img').getAttribute('alt')),
    ).toEqual([
      expect.stringMatching(/^Picture 1 of A12, added Nov 3/),
      'Blue stain',
      expect.stringMatching(/^Picture 3 of A12, added Nov 3/),
    ]);
    await user.click(tiles[0]!);
    await screen.findByRole('dialog', { name: 'Picture 1 of 3' });
    await user.keyboard('{ArrowRight}');
    const dialog = await screen.findByRole('dialog', { name: 'Picture 2 of 3' });
    expect(await within(dialog).findByRole('img', { name: 'Blue stain' })).toBeTruthy();
    await expectNoBarriers();
    await user.keyboard('{ArrowRight}{ArrowRight}');
    await screen.findByRole('dialog', { name: 'Picture 1 of 3' });
    await user.keyboard('{End}');
    await screen.findByRole('dialog', { name: 'Picture 3 of 3' });
    await user.keyboard('{Escape}');
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  });

  test('saves a caption over one that was saved meanwhile only when asked', async () => {
    let tries = 0;
    const { machine, user } = await open({
      'pictures.list': three,
      'pictures.edit': () => {
        tries++;
        if (tries === 1)
          throw new Conflict(
            { ...aPicture(1, { version: 2 }), caption: 'South end' },
            message('conflict.edited-meanwhile'),
          );
        return { place };
      },
    });
    await user.click(screen.getByRole('button', { name: /^Picture 1/ }));
    await user.click(await screen.findByRole('button', { name: 'Edit caption' }));
    await screen.findByRole('textbox', { name: 'Caption' });
    // Arrows are the field's.
    await user.keyboard('North nd{ArrowLeft}{ArrowLeft}e{Enter}');
    await screen.findByText('The caption is now: South end');
    await user.click(screen.getByRole('button', { name: 'Use what I typed' }));
    await waitFor(() => expect(screen.queryByRole('textbox', { name: 'Caption' })).toBeNull());
    expect(machine.inputsOf('pictures.edit')).toEqual([
      { id: 1, basedOn: 1, changed: { caption: 'North end' } },
      { id: 1, basedOn: 2, changed: { caption: 'North end' } },
    ]);
    expect(screen.getByRole('dialog', { name: 'Picture 1 of 3' })).toBeTruthy();
  });

  test('deletes what it shows', async () => {
    const { machine, user } = await open({ 'pictures.list': three });
    await user.click(screen.getByRole('button', { name: 'Blue stain' }));
    await user.click(await screen.findByRole('button', { name: 'Delete' }));
    await waitFor(() => expect(told()).toEqual(['Picture deleted.']));
    expect(machine.inputsOf('pictures.delete')).toEqual([{ id: 2 }]);
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  test('says of a picture whose file is missing that it is, and shows the others', async () => {
    const { user } = await open({
      'pictures.list': () => [aPicture(1, { thumbnail: null }), aPicture(2)],
      'pictures.read': ({ id }) => {
        if (id === 1) throw new Refusal(message('refusal.picture-missing'));
        return { base64: 'AAAA' };
      },
    });
    await user.click(await screen.findByRole('button', { name: /^The file of this picture is missing/ }));
    const dialog = await screen.findByRole('dialog', { name: 'Picture 1 of 2' });
    expect((await within(dialog).findByRole('alert')).textContent).toMatch(
      'The file of this picture is missing.',
    );
    await user.keyboard('{ArrowRight}');
    await screen.findByRole('img', { name: /^Picture 2 of A12/ });
  });

  test('reads a large picture part by part', async () => {
    const { machine, user } = await open({
      'pictures.list': () => [aPicture(1, { bytes: 6 })],
    });
    await user.click(screen.getByRole('button', { name: /^Picture 1/ }));
    await within(await screen.findByRole('dialog')).findByRole('img');
    expect(machine.inputsOf('pictures.read')).toEqual([
      { id: 1, offset: 0 },
      { id: 1, offset: 3 },
    ]);
  });
});
