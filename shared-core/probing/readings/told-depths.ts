/** Of what a round found, % MC. */
interface Found {
  averagePct: number | null;
  shellPct: number | null;
  corePct: number | null;
  isDepthUnknown?: true | undefined;
}

/** The shell and the core to show to a person. Both are null where the depth is unknown. */
export const toldDepths = ({ shellPct, corePct, isDepthUnknown }: Omit<Found, 'averagePct'>) =>
  isDepthUnknown ? { shellPct: null, corePct: null } : { shellPct, corePct };

/** What was read at depths that nobody knows, % MC; null where a depth is known, or nothing can be used. */
export function readAtUnknown({ averagePct, shellPct, corePct, isDepthUnknown }: Found): number | null {
  if (!isDepthUnknown) return null;
  // Of one planned depth it is the mean of what was read; of two only their average is of all.
  return corePct === null ? (shellPct ?? averagePct) : averagePct;
}
