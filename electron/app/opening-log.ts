import type { Log } from '../log/log-file.ts';
import type { Commands } from './handlers.ts';

/** Has the computer show a file by its own program. @returns whether it did */
export type OpenFile = (file: string) => Promise<boolean>;

export const logCommands = ({ file, newest }: Log, openFile: OpenFile) =>
  ({
    'log.open': async () => ({ file, text: (await openFile(file)) ? null : newest() }),
  }) satisfies Partial<Commands>;
