import { DAY_MS } from '../../time.ts';

/** Readings so old tell little of a board that is not ready: it is read again at the latest then. Common practice, no source. */
export const OLD_AFTER_DAYS = 90;

/**
 * When a board is read again that no forecast names a day for.
 * @param readAt  when it was last read, UTC instant
 * @returns UTC, ms
 */
export const oldByMs = (readAt: string): number => Date.parse(readAt) + OLD_AFTER_DAYS * DAY_MS;
