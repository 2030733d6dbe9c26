import type { Log } from '../log/log-file.ts';
import type { Commands } from './handlers.ts';

/** Has the computer show a file by its own program. @returns whether it did */
export type OpenFile = (file: string) => Promise<boolean>;

export const logCommands = ({ file, newest, isLastLost }: Log, openFile: OpenFile) =>
  ({
    'log.open': async () => {
      const isWritten = !isLastLost();
      // What happened last would be missing in it, or there is no file at all.
      const isOpened = isWritten && (await openFile(file));
      return { file, text: isOpened ? null : newest(), isWritten };
    },
  }) satisfies Partial<Commands>;
