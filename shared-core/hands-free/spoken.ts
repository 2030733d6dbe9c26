import { type Message, message } from '../words/message.ts';

/** How fast a voice speaks. */
export const voicePaces = ['slow', 'normal', 'fast'] as const;
export type VoicePace = (typeof voicePaces)[number];

/** As a share of a voice's own pace. */
export const paceRates: Record<VoicePace, number> = { slow: 0.75, normal: 1, fast: 1.5 };

/** An ID as a person reads it out: "WAL 02", not "WAL minus zero two". */
export const spokenCode = (code: string): string => code.replaceAll(/[^\p{L}\p{N}]+/gu, ' ').trim();

/**
 * What a voice says of a reading that was just saved: its value first, then what comes next.
 *
 * @param reading  `mcPct` null where its value is not known; `counts`: whether it is used
 * @param next     the next spot of the board, or null where all are read
 * @param after    what follows once all are read; null where the person is not told by this sentence
 */
export function spokenOfSaved(
  reading: { mcPct: number | null; counts: boolean; isQuestionable: boolean },
  next: Message | null,
  after: Message | null,
): Message[] {
  const { mcPct, counts, isQuestionable } = reading;
  const value = counts && mcPct !== null ? message('spoken.value', { mcPct }) : message('spoken.not-used');
  const what = counts && isQuestionable ? [message('spoken.questionable'), value] : [value];
  const again = counts && isQuestionable ? [message('spoken.go-back')] : [];
  const then = next === null ? after : message('spoken.next-spot', { spot: next });
  return [...what, ...again, ...(then === null ? [] : [then])];
}

/**
 * What a voice says once all spots of a board are read.
 *
 * @param nextCode null where it says the next board itself, later
 * @param waits    a questionable reading of it keeps the next board from coming by itself
 */
export function spokenOfBoard(callName: Message | null, nextCode: string | null, waits = false): Message {
  const done = callName === null ? message('spoken.board-done') : message('spoken.board-call', { callName });
  if (waits) return message('spoken.waits', { done });
  if (nextCode === null) return done;
  return message('spoken.then-board', { done, boardCode: spokenCode(nextCode) });
}
