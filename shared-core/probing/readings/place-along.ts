import type { Message } from '../../words/message.ts';
import type { PlannedSpot } from './spots.ts';

/** Places of boards of unknown length, as shares of it from the left end. */
const shares: Partial<Record<string, number>> = {
  'spot.quarter-from-left': 0.25,
  'spot.third-from-left': 0.33,
  'spot.half-way': 0.5,
  'spot.third-from-right': 0.67,
  'spot.quarter-from-right': 0.75,
  'spot.in-middle': 0.5,
};

/**
 * Where along a board a planned spot is, as a share of its length from the left end, 0 to 1; null for one elsewhere.
 * @param lengthMm of the board, mm, above 0; null when not known
 */
export function placeAlong({ along, spot }: PlannedSpot, lengthMm: number | null): number | null {
  const { code, facts } = partOf(along);
  if (code === 'spot.along') return Number(facts?.alongSharePct) / 100;
  // The cut is in the half where the saw stands.
  const fromEnd = lengthMm === null || spot.fromEndMm === null ? null : spot.fromEndMm / lengthMm;
  if (spot.face === 'fresh-cut') return fromEnd ?? 0.25;
  if (code === 'spot.from-left') return fromEnd;
  if (code === 'spot.from-right') return fromEnd === null ? null : 1 - fromEnd;
  return shares[code] ?? null;
}

/** On a fresh rip or split, the place is named within the sentence. */
function partOf(along: Message): Message {
  const inner = along.facts?.along;
  return typeof inner === 'object' && 'code' in inner ? inner : along;
}
