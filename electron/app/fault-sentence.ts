import { Refusal } from '../../shared-core/contract/answer.ts';

/** What did not happen, as "nothing was saved", and how to have it all the same, as "do it again". */
interface Undone {
  lost: string;
  again: string;
}

/** Disturbances from outside, by the beginning of SQLite's code: what is wrong, and what a person can do. */
const disturbances = [
  {
    codes: ['SQLITE_BUSY', 'SQLITE_LOCKED'],
    wrong: 'The yard file is in use by another program',
    remedy: 'Close the other program',
  },
  {
    codes: ['SQLITE_FULL', 'SQLITE_IOERR'],
    wrong: 'The disk would not take it (full, or failing)',
    remedy: 'Make room',
  },
];

/**
 * What a person is told of an error: a refusal speaks for itself, a disturbance from outside is named, and anything
 * else is called a fault of ours and goes to the log.
 */
export function faultSentence(
  error: unknown,
  { lost, again }: Undone,
  reportFault: (error: unknown) => void,
): string {
  if (error instanceof Refusal) return error.message;
  const code = String((error as { code?: unknown })?.code ?? '');
  const known = disturbances.find(({ codes }) => codes.some((each) => code.startsWith(each)));
  if (known) {
    return `${known.wrong}, so ${lost}. What was kept before is safe. ${known.remedy} and ${again}.`;
  }
  reportFault(error);
  const message = error instanceof Error ? error.message : String(error);
  return `Something went wrong inside Pintally (${message}). What was kept before is safe. Start Pintally anew and ${again}.`;
}
