import { randomUUID } from 'node:crypto';
import { type FileHandle, open, readdir, rm, stat, statfs } from 'node:fs/promises';
import { join } from 'node:path';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { TRANSFER_PART_BYTES } from '../../../shared-core/contract/backups.ts';
import { message } from '../../../shared-core/words/message.ts';
import { LEAST_LEFT_BYTES, sizeWithPictures } from '../../store/backup.ts';
import { makePrivateFolder } from '../../store/private-files.ts';
import type { Commands } from '../handlers.ts';
import { createTurns, type Turns } from '../turns.ts';
import type { Windows } from '../windows.ts';
import { askBackup, type BackupThread, patienceFor } from './backup-tasks.ts';
import type { Yards } from './yards.ts';

const NAME = /^([0-9a-f-]{36}\.sqlite)(\.pintally\.part)?(-\w+)?$/;

/** A file on its way from or to a window. */
interface Transfer {
  id: string;
  file: string;
  sizeBytes: number;
  opened: FileHandle;
  /** Bytes so far: each part follows the one before. */
  at: number;
}

/** One of each at a time. */
interface OfWindow {
  upload: Transfer | null;
  download: Transfer | null;
  /** What the window asks for. */
  turns: Turns;
}

/**
 * Files for a window to download, as copies of the yard, and yard files that one uploads, part by part as requests like any
 * other: no other way leads into this process. They lie beside the yard file until then, or until the window closes.
 */
export function createTransfers(
  yards: Pick<Yards, 'toBackUp'>,
  thread: BackupThread,
  { closed }: Pick<Windows, 'closed'>,
  { dataDir, now }: { dataDir: string; now: () => string },
) {
  const folder = join(dataDir, 'transfers');
  const ofWindows = new Map<string, OfWindow>();
  /** Files of the folder that belong to a window, or are still being read. */
  const inUse = new Set<string>();
  /** What is being read, by its file: how often. */
  const held = new Map<string, number>();
  /** Held while it was dropped: deleted once nothing reads it any more. */
  const dropped = new Set<string>();
  /** When the transfers of closed windows are dropped. */
  let ended: Promise<unknown> = Promise.resolve();

  function inTurn<T>(window: string, work: (own: OfWindow) => Promise<T>): Promise<T> {
    const own = ofWindows.get(window) ?? { upload: null, download: null, turns: createTurns() };
    ofWindows.set(window, own);
    return own.turns.inTurn(() => work(own));
  }

  async function drop(own: OfWindow, which: 'upload' | 'download'): Promise<void> {
    const transfer = own[which];
    own[which] = null;
    if (transfer === null) return;
    await transfer.opened.close().catch(() => undefined);
    if (held.has(transfer.file)) dropped.add(transfer.file);
    else await remove(transfer.file);
  }

  async function remove(file: string): Promise<void> {
    inUse.delete(file);
    await rm(file, { force: true });
  }

  function end(window: string): void {
    const own = ofWindows.get(window);
    if (own === undefined) return;
    // Where it connects again, it starts from the first part.
    ofWindows.delete(window);
    const dropBoth = own.turns.inTurn(async () => {
      await drop(own, 'upload');
      await drop(own, 'download');
    });
    ended = Promise.allSettled([ended, dropBoth]);
  }

  closed.follow(end);

  /** How much the uploads that are under way still need, bytes. */
  const stillToCome = (): number =>
    [...ofWindows.values()].reduce((sum, { upload }) => sum + (upload ? upload.sizeBytes - upload.at : 0), 0);

  async function refuseWithoutRoom(bytes: number): Promise<void> {
    const { bavail, bsize } = await statfs(folder);
    if (bavail * bsize < bytes + stillToCome() + LEAST_LEFT_BYTES) {
      throw new Refusal(message('refusal.restore-no-room', { folder: dataDir }));
    }
  }

  /** Has `work` make a transfer of a new file, which is removed where that fails. */
  async function make(
    work: (file: string) => Promise<Omit<Transfer, 'id' | 'file' | 'at'>>,
  ): Promise<Transfer> {
    makePrivateFolder(folder);
    const id = randomUUID();
    const file = join(folder, `${id}.sqlite`);
    inUse.add(file);
    try {
      return { ...(await work(file)), id, file, at: 0 };
    } catch (error) {
      await remove(file);
      throw error;
    }
  }

  /** Removes what an earlier process left. */
  async function clear(): Promise<void> {
    const names = await readdir(folder).catch(() => []);
    for (const name of names) {
      const [, ofFile] = NAME.exec(name) ?? [];
      if (ofFile && !inUse.has(join(folder, ofFile)))
        await rm(join(folder, name), { recursive: true, force: true });
    }
  }

  /** Has `write` make a file, which is ready for the window to download. */
  const offer = (
    window: string,
    write: (file: string) => Promise<unknown>,
  ): Promise<{ download: string; sizeBytes: number }> =>
    inTurn(window, async (own) => {
      await drop(own, 'download');
      own.download = await make(async (file) => {
        await write(file);
        return { sizeBytes: (await stat(file)).size, opened: await open(file, 'r') };
      });
      return { download: own.download.id, sizeBytes: own.download.sizeBytes };
    });

  return {
    clear,
    offer,
    /** Whether a window uploaded all of that file. */
    isUploaded: (file: string, window: string): boolean => {
      const upload = ofWindows.get(window)?.upload;
      return upload?.file === file && upload.at === upload.sizeBytes;
    },
    /** Does work on a file that a person chose; where it was uploaded, it stays until that is done. */
    whileHeld: async <T>(file: string, work: () => T | Promise<T>): Promise<T> => {
      held.set(file, (held.get(file) ?? 0) + 1);
      try {
        return await work();
      } finally {
        const others = (held.get(file) ?? 1) - 1;
        if (others > 0) held.set(file, others);
        else {
          held.delete(file);
          if (dropped.delete(file)) await remove(file);
        }
      }
    },
    commands: {
      'backups.beginUpload': ({ sizeBytes }, window) =>
        inTurn(window, async (own) => {
          await drop(own, 'upload');
          own.upload = await make(async (file) => {
            await refuseWithoutRoom(sizeBytes);
            return { sizeBytes, opened: await open(file, 'wx', 0o600) };
          });
          return { upload: own.upload.id, file: own.upload.file };
        }),
      'backups.addToUpload': ({ upload: id, offset, base64 }, window) =>
        inTurn(window, async ({ upload: to }) => {
          const bytes = Buffer.from(base64, 'base64');
          if (to?.id !== id || to.at !== offset || offset + bytes.length > to.sizeBytes) {
            throw new Refusal(message('refusal.upload-stopped'));
          }
          await to.opened.write(bytes, 0, bytes.length, offset);
          to.at += bytes.length;
          return null;
        }),
      'backups.dropUpload': (_, window) =>
        inTurn(window, async (own) => {
          await drop(own, 'upload');
          return null;
        }),
      'backups.beginDownload': async (_, window) => {
        const offered = await offer(window, async (target) => {
          const present = yards.toBackUp();
          if (present === null) throw new Refusal(message('refusal.backup-own-not-open'));
          const { file: from } = present;
          await askBackup(thread, 'copy', { from, target }, patienceFor(sizeWithPictures(from)));
        });
        return { ...offered, fileName: `pintally-${now().slice(0, 10)}.sqlite` };
      },
      'backups.nextOfDownload': ({ download: id, offset }, window) =>
        inTurn(window, async (own) => {
          const from = own.download;
          if (from?.id !== id || offset !== from.at) throw new Refusal(message('refusal.download-stopped'));
          const bytes = Buffer.alloc(Math.min(TRANSFER_PART_BYTES, from.sizeBytes - offset));
          await from.opened.read(bytes, 0, bytes.length, offset);
          from.at += bytes.length;
          if (from.at === from.sizeBytes) await drop(own, 'download');
          return { base64: bytes.toString('base64') };
        }),
      'backups.dropDownload': (_, window) =>
        inTurn(window, async (own) => {
          await drop(own, 'download');
          return null;
        }),
    } satisfies Partial<Commands>,
    close: async (): Promise<void> => {
      for (const window of [...ofWindows.keys()]) end(window);
      await ended;
      await clear();
    },
  };
}
export type Transfers = ReturnType<typeof createTransfers>;
