import type { When } from '../../words/message.ts';

// Stryker disable next-line EqualityOperator: of one day twice, either is the later.
const later = (one: string, other: string): string => (one > other ? one : other);

/** When the last of several boards is likely ready: no end of that range comes before that of the next board. */
export const lastReadyWhen = (next: When, last: When): When => ({
  likely: later(next.likely, last.likely),
  from: later(next.from, last.from),
  to: next.to === null || last.to === null ? null : later(next.to, last.to),
});
