import { type Message, message } from '../words/message.ts';

/** Kinds of records with a count of their own, in this order. All others have one together. */
const NAMED = [
  'stacks',
  'boards',
  'rounds',
  'readings',
  'amendments',
  'moves',
  'reservations',
  'places',
  'pictures',
] as const;

/** How many of which records, a part for each kind: "1 stack", "2 boards", "1 other record". */
export function countsInWords(counts: Readonly<Record<string, number>>): Message[] {
  const named = NAMED.flatMap((kind) =>
    counts[kind] ? [message(`merge.count.${kind}`, { count: counts[kind] })] : [],
  );
  const others = Object.entries(counts)
    .filter(([kind]) => !NAMED.some((each) => each === kind))
    .reduce((sum, [, count]) => sum + count, 0);
  return others > 0 ? [...named, message('merge.count.others', { count: others })] : named;
}
