import { existsSync } from 'node:fs';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { MOST_PICTURES } from '../../../shared-core/contract/pictures.ts';
import { isJpeg } from '../../../shared-core/pictures/jpeg.ts';
import { message } from '../../../shared-core/words/message.ts';
import { picturesBeside } from '../../store/picture-files.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import { placeOf } from '../stock/notes.ts';
import { askPictures, type PictureThread, type SavedPicture } from './picture-tasks.ts';

/** So many pictures may be taken and not yet added. */
const MOST_TAKEN = 1000;

/** Pictures of boards, stacks, rounds and readings: each a row of the yard, and a file beside it that a thread saves and reads. */
export function createPictures(
  queryContext: QueryContext,
  context: AppContext,
  thread: PictureThread,
  uploads: {
    isUploaded(file: string, window: string): boolean;
    whileHeld<T>(file: string, work: () => Promise<T>): Promise<T>;
  },
) {
  /** By hash: what the thread found out of a file that no row has yet. */
  const taken = new Map<string, SavedPicture>();
  let tidied: Promise<unknown> = Promise.resolve();
  const folder = (): string => picturesBeside(context.yard().file);
  const get = (id: number) => orRefuse(context.yard().pictures.get(id), 'picture');

  return {
    /** Files that nothing refers to are set apart, and deleted after a month. */
    tidy: (): Promise<unknown> => {
      // Most yards have no pictures: they need no thread at the start.
      if (!existsSync(folder())) return Promise.resolve();
      const used = queryContext.yard().pictures.hashes();
      tidied = askPictures(thread, 'tidy', { folder: folder(), used, nowMs: Date.parse(context.now()) });
      return tidied;
    },
    /** Waits for what is being tidied. */
    idle: async (): Promise<void> => {
      await tidied.catch(() => undefined);
    },
    queries: {
      'pictures.list': ({ subject }) => {
        const yard = queryContext.yard();
        placeOf(yard, subject);
        return yard.pictures.of(subject);
      },
      'pictures.read': async ({ id, offset }) => {
        const { contentHash: hash } = orRefuse(queryContext.yard().pictures.get(id), 'picture');
        return { base64: await askPictures(thread, 'read', { folder: folder(), hash, offset }) };
      },
    } satisfies Partial<Queries>,
    commands: {
      'pictures.take': async ({ file }, window) => {
        if (!uploads.isUploaded(file, window)) throw new Refusal(message('refusal.upload-stopped'));
        const saved = await uploads.whileHeld(file, () =>
          askPictures(thread, 'take', { file, folder: folder() }),
        );
        if (taken.size >= MOST_TAKEN) taken.clear();
        taken.set(saved.contentHash, saved);
        return { contentHash: saved.contentHash };
      },
      'pictures.add': ({ subject, pictures: added }) => {
        const { pictures, ...yard } = context.yard();
        const place = placeOf(yard, subject);
        const there = new Set(pictures.of(subject).map(({ contentHash }) => contentHash));
        if (there.size + added.length > MOST_PICTURES) {
          throw new Refusal(message('refusal.picture-too-many', { pictures: MOST_PICTURES }));
        }
        const ids = added.map(({ contentHash, caption, thumbnail }) => {
          const saved = taken.get(contentHash);
          if (saved === undefined) throw new Refusal(message('refusal.upload-stopped'));
          if (there.has(contentHash)) throw new Refusal(message('refusal.picture-there'));
          there.add(contentHash);
          if (thumbnail !== null && isJpeg(Buffer.from(thumbnail, 'base64'))) {
            pictures.setThumbnail(contentHash, thumbnail);
          }
          return pictures.add(subject, { ...saved, caption, addedAt: context.now() });
        });
        return { place, ids };
      },
      'pictures.edit': (edit) => {
        const { subject } = get(edit.id);
        orConflict(context.yard().pictures.edit(edit));
        return { place: placeOf(context.yard(), subject) };
      },
      'pictures.delete': ({ id }) => {
        const { subject } = get(id);
        context.yard().pictures.delete(id);
        return { place: placeOf(context.yard(), subject), act: context.yard().acts.now() };
      },
    } satisfies Partial<Commands>,
  };
}
