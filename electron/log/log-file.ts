import { appendFileSync, readFileSync, renameSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makePrivateFolder } from '../store/private-files.ts';
import { faultText } from './fault-text.ts';

/** How large one file of the fault log may become, bytes, and how many there are. */
export const LOG_LIMITS = { fileBytes: 1024 * 1024, files: 5 } as const;
/** How much of it the window shows, characters. */
const SHOWN = 256 * 1024;

/**
 * The fault log in the data folder: the newest file is `logs/pintally.log`, older ones carry a number. Written at
 * once, so that the last words before an end are in it. Nothing here throws: a fault must never cause another.
 */
export function createLog(dataDir: string, clock: () => Date = () => new Date()) {
  const file = join(dataDir, 'logs', 'pintally.log');
  const older = (number: number): string =>
    number === 0 ? file : join(dataDir, 'logs', `pintally.${number}.log`);

  /** The oldest one is overwritten. */
  function rotate(): void {
    for (let number = LOG_LIMITS.files - 2; number >= 0; number--) {
      try {
        renameSync(older(number), older(number + 1));
      } catch {
        // There are fewer files yet.
      }
    }
  }

  /** What happened last is not in it. */
  let isLastLost = false;

  function note(what: string, error?: unknown): void {
    try {
      const entry = `${clock().toISOString()} ${what}${error === undefined ? '' : ` ${faultText(error)}`}\n`;
      makePrivateFolder(dirname(file));
      if (sizeOf(file) + Buffer.byteLength(entry) > LOG_LIMITS.fileBytes) rotate();
      appendFileSync(file, entry, { mode: 0o600 });
      isLastLost = false;
    } catch {
      isLastLost = true;
      console.error(what, ...(error === undefined ? [] : [error]));
    }
  }

  return {
    /** Where the newest file is. */
    file,
    /** Writes what happened. */
    note,
    /** Writes a fault of ours. */
    fault: (error: unknown): void => note('fault:', error),
    /** Whether what happened last could not be written, and was printed instead. */
    isLastLost: (): boolean => isLastLost,
    /** What was written last, oldest first. */
    newest: (): string => {
      const text = textOf(older(1)) + textOf(file);
      if (text.length <= SHOWN) return text;
      return text.slice(text.indexOf('\n', text.length - SHOWN) + 1);
    },
  };
}
export type Log = ReturnType<typeof createLog>;

const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}
