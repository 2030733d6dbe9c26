import { Refusal } from '../../shared-core/contract/answer.ts';
import { type Message, message } from '../../shared-core/words/message.ts';

/** What did not happen, and how to have it all the same once what was wrong is right. */
export interface Undone {
  undone: Message;
  again: Message;
}

/** Disturbances from outside, by the beginning of SQLite's code. */
const disturbances = [
  { codes: ['SQLITE_BUSY', 'SQLITE_LOCKED'], says: 'refusal.file-in-use' },
  { codes: ['SQLITE_FULL', 'SQLITE_IOERR'], says: 'refusal.disk-failed' },
] as const;

/**
 * What a person reads of an error: a refusal has its own message, a disturbance from outside is named, and anything
 * else is a fault of ours. Its details go to the log (`electron/log/`) and not into a sentence.
 */
export function faultMessage(error: unknown, undone: Undone, reportFault: (error: unknown) => void): Message {
  if (error instanceof Refusal) return error.problem;
  const code = String((error as { code?: unknown })?.code ?? '');
  const known = disturbances.find(({ codes }) => codes.some((each) => code.startsWith(each)));
  if (known) return message(known.says, { ...undone });
  reportFault(error);
  return message('refusal.unexpected', { ...undone });
}
