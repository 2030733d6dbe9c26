import { Refusal } from '../../shared-core/contract/answer.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import { OutcomeUnknown } from './acting.ts';

/** What did not happen, and how to have it all the same once what was wrong is right. */
export interface Undone {
  undone: Message;
  again: Message;
}

/** Disturbances from outside, by the beginning of SQLite's code. */
const disturbances = [
  { codes: ['SQLITE_BUSY', 'SQLITE_LOCKED'], says: 'refusal.file-in-use' },
  { codes: ['SQLITE_FULL', 'SQLITE_IOERR'], says: 'refusal.disk-failed' },
  { codes: ['SQLITE_READONLY', 'SQLITE_CANTOPEN'], says: 'refusal.yard-read-only' },
] as const;

/** Which sentence says which outside cause failed; undefined where the error has none. */
function disturbanceIn(error: unknown): (typeof disturbances)[number]['says'] | undefined {
  const code = String((error as { code?: unknown })?.code ?? '');
  return disturbances.find(({ codes }) => codes.some((each) => code.startsWith(each)))?.says;
}

/** Whether the same may well work later, with nothing of ours changed. */
export const isDisturbance = (error: unknown): boolean => disturbanceIn(error) !== undefined;

const NOT_KNOWN: Undone = {
  undone: message('refusal.saved-or-not'),
  again: message('refusal.not-twice'),
};

/**
 * What a person reads of an error: a refusal has its own message, a disturbance from outside is named, and anything
 * else is a fault of ours. Its details go to the fault log (`electron/log/`) and not into a sentence.
 */
export function faultMessage(error: unknown, undone: Undone, reportFault: (error: unknown) => void): Message {
  if (error instanceof Refusal) return error.problem;
  if (error instanceof OutcomeUnknown) return faultMessage(error.cause, NOT_KNOWN, reportFault);
  const says = disturbanceIn(error);
  if (says) return message(says, { ...undone });
  reportFault(error);
  return message('refusal.unexpected', { ...undone });
}
