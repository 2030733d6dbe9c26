import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { TRANSFER_PART_BYTES } from '../../../shared-core/contract/backups.ts';
import type { Subject } from '../../../shared-core/contract/notes.ts';
import { MOST_PICTURES, type NewPicture, type ShownPicture } from '../../../shared-core/contract/pictures.ts';
import { MOST_PICTURE_BYTES } from '../../../shared-core/pictures/picture.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { uploadFile } from '../backups/transfers.ts';
import { useTransfer } from '../backups/useTransfer.ts';
import { makeThumbnail } from './thumbnail.ts';

/** A file that is no picture to add, and why. */
export interface RefusedFile {
  fileName: string;
  why: Message;
}

/** @returns null where it was stopped. @throws Refusal */
async function take(
  file: File,
  onPart: (done: number, total: number) => boolean,
): Promise<NewPicture | null> {
  if (file.size > MOST_PICTURE_BYTES) throw new Refusal(message('refusal.picture-too-large'));
  const uploaded = await uploadFile(file, onPart);
  if (uploaded === null) return null;
  const { contentHash } = await bridge().command('pictures.take', { file: uploaded });
  const thumbnail = await makeThumbnail(file).catch(() => {
    throw new Refusal(message('refusal.picture-incomplete'));
  });
  return { contentHash, caption: '', thumbnail };
}

/** Whether it is the file's own fault: the others can be added. */
const isOfFile = (error: unknown): error is Refusal =>
  error instanceof Refusal && /^refusal\.picture-(?!no-room|disk)/.test(error.problem.code);

/**
 * Adds files as pictures: what can be added of them goes in as one act, and each other has its reason.
 * @param there  the pictures that are there already
 */
export function useAddPictures(subject: Subject, there: readonly ShownPicture[]) {
  const { say } = useWords();
  const { underWay, run, stop } = useTransfer();
  const [count, setCount] = useState(0);
  const [refused, setRefused] = useState<readonly RefusedFile[]>([]);

  async function takeAll(files: readonly File[]): Promise<NewPicture[] | null> {
    const sizes = files.map(({ size }) => Math.ceil(size / TRANSFER_PART_BYTES));
    const total = sizes.reduce((sum, size) => sum + size, 0);
    const isIn = new Set(there.map(({ contentHash }) => contentHash));
    const taken: NewPicture[] = [];
    return run(async (onPart) => {
      let before = 0;
      for (const [index, file] of files.entries()) {
        if (!onPart(before, total)) return null;
        try {
          if (isIn.size >= MOST_PICTURES)
            throw new Refusal(message('refusal.picture-too-many', { pictures: MOST_PICTURES }));
          const picture = await take(file, (done) => onPart(before + done, total));
          if (picture === null) return null;
          if (isIn.has(picture.contentHash)) throw new Refusal(message('refusal.picture-there'));
          isIn.add(picture.contentHash);
          taken.push(picture);
        } catch (error) {
          if (!isOfFile(error)) throw error;
          const { name: fileName } = file;
          setRefused((others) => [...others, { fileName, why: error.problem }]);
        }
        before += sizes[index] ?? 0;
      }
      return onPart(total, total) ? taken : null;
    });
  }

  async function addAll(files: readonly File[]): Promise<void> {
    setCount(files.length);
    setRefused([]);
    const taken = await takeAll(files).finally(() => bridge().command('backups.dropUpload', {}));
    if (taken === null) tellDone(say('pictures.stopped'));
    else if (taken.length > 0) {
      await bridge().command('pictures.add', { subject, pictures: taken });
      tellDone(say('pictures.added', { count: taken.length }));
    }
  }

  return {
    /** Null while none are being added. */
    underWay: underWay && { ...underWay, count },
    stop,
    refused,
    forgetRefused: (): void => setRefused([]),
    add: (files: readonly File[]): void => {
      // Another is under way: a window uploads one file at a time.
      if (underWay === null && files.length > 0) void attempt(addAll(files));
    },
  };
}
