/** What a meter's values are corrected by, as its checks say that count. */

/** A check that counts. */
export interface CountingCheck {
  /** UTC instant. */
  at: string;
  /** How far off the meter was, points or decades; 0 where it was right. */
  off: number;
  /** When a person had readings corrected by it; null where nobody did. */
  correctedAt: string | null;
}

/** Since when values are corrected by how much, points or decades. */
export interface CorrectionStep {
  at: string;
  off: number;
}

/**
 * A correction is that of the newest check by which a person had readings corrected. Where that was done after the next
 * check was made, it is of the readings before that one only: the next says how the meter was without it.
 *
 * @param checks  of one meter, and in its unit, the oldest first
 * @returns one step a check; before the first nothing is corrected
 */
export function correctionSteps(checks: readonly CountingCheck[]): CorrectionStep[] {
  let on = 0;
  return checks.map(({ at, off, correctedAt }, index) => {
    if (correctedAt === null) return { at, off: on };
    const next = checks[index + 1];
    if (next === undefined || correctedAt <= next.at) on = off;
    return { at, off };
  });
}

/** What a value of that instant is corrected by. */
export const correctionAt = (steps: readonly CorrectionStep[], at: string): number =>
  steps.findLast((step) => step.at <= at)?.off ?? 0;
