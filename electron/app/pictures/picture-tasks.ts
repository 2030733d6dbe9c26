import { readFileSync, statSync } from 'node:fs';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { TRANSFER_PART_BYTES } from '../../../shared-core/contract/backups.ts';
import type { Outcome } from '../../../shared-core/outcome.ts';
import { cleanPicture, type MediaType, MOST_PICTURE_BYTES } from '../../../shared-core/pictures/picture.ts';
import { message } from '../../../shared-core/words/message.ts';
import { checkPicture, hashOf, readPart, savePicture, tidyPictures } from '../../store/picture-files.ts';
import type { OwnThread } from '../own-thread.ts';
import { orRefused, outcomeOf } from '../thread-outcome.ts';

/** A picture whose file is beside the yard. */
export interface SavedPicture {
  contentHash: string;
  mediaType: MediaType;
  bytes: number;
}

const pictureTasks = {
  /** Saves what is a picture of a file, beside the yard. */
  take: ({ file, folder }: { file: string; folder: string }): SavedPicture => {
    if (statSync(file).size > MOST_PICTURE_BYTES) throw new Refusal(message('refusal.picture-too-large'));
    const picture = cleanPicture(readFileSync(file));
    if (!picture.ok) throw new Refusal(picture.problem);
    const { bytes, mediaType } = picture.value;
    const contentHash = hashOf(bytes);
    if (!savePicture(folder, bytes, contentHash)) throw new Refusal(message('refusal.picture-no-room'));
    return { contentHash, mediaType, bytes: bytes.length };
  },

  /** A part of a picture; with the first, all of it is compared with its hash. */
  read: ({ folder, hash, offset }: { folder: string; hash: string; offset: number }): string => {
    const state = offset === 0 ? checkPicture(folder, hash) : 'whole';
    if (state !== 'whole') throw new Refusal(message(`refusal.picture-${state}`));
    return readPart(folder, hash, offset, TRANSFER_PART_BYTES).toString('base64');
  },

  tidy: ({ folder, used, nowMs }: { folder: string; used: string[]; nowMs: number }): null => {
    tidyPictures(folder, new Set(used), nowMs);
    return null;
  },
};
type PictureTasks = typeof pictureTasks;
type TaskName = keyof PictureTasks;

interface PictureQuestion {
  task: TaskName;
  input: unknown;
}
export type PictureThread = OwnThread<PictureQuestion, Outcome<unknown>>;

export const doPictureTask = ({ task, input }: PictureQuestion): Promise<Outcome<unknown>> =>
  outcomeOf(() => {
    try {
      return pictureTasks[task](input as never);
    } catch (error) {
      throw diskProblem(error) ?? error;
    }
  });

/** Null for a fault of ours. */
function diskProblem(error: unknown): Refusal | null {
  const code = String((error as { code?: unknown }).code ?? '');
  if (/^(ENOSPC|EDQUOT)$/.test(code)) return new Refusal(message('refusal.picture-no-room'));
  if (/^(EACCES|EPERM|EROFS|ENOTDIR|EEXIST|EISDIR|ENOENT|EIO)$/.test(code))
    return new Refusal(message('refusal.picture-disk'));
  return null;
}

/** Has a task done by the thread. @throws Refusal */
export async function askPictures<N extends TaskName>(
  thread: PictureThread,
  task: N,
  input: Parameters<PictureTasks[N]>[0],
): Promise<ReturnType<PictureTasks[N]>> {
  return orRefused(await thread.ask({ task, input })) as ReturnType<PictureTasks[N]>;
}
