import type { MeterCheck } from '../../../shared-core/contract/meter-checks.ts';
import { withoutOff } from '../../../shared-core/probing/readings/meter-check.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import type { Say } from '../../../shared-core/words/words.ts';

/** How far off a meter is once its values are corrected: points, or of ohms a share, both above 0 where it shows more. */
export function offOf({ off, correctedBy }: MeterCheck, unit: ReadingUnit): number {
  const left = off - correctedBy;
  return unit === 'pct' ? left : 10 ** left - 1;
}

/** What a check found: the number first, and what it should be. */
export function checkSentence(check: MeterCheck, unit: ReadingUnit, say: Say): string {
  const { shown, right, correctedBy, state } = check;
  const off = Math.abs(offOf(check, unit));
  const corrected = withoutOff(unit, shown, correctedBy);
  const isRight = state === 'right';
  if (unit === 'pct') {
    const value =
      correctedBy === 0
        ? say('meter-check.shown.pct', { shownPct: shown })
        : say('meter-check.shown-corrected.pct', { shownPct: shown, correctedPct: corrected });
    return isRight
      ? say('meter-check.right.pct', { value, rightPct: right })
      : say('meter-check.off.pct', { value, rightPct: right, offPoints: off });
  }
  const value =
    correctedBy === 0
      ? say('meter-check.shown.ohm', { shownOhm: shown })
      : say('meter-check.shown-corrected.ohm', { shownOhm: shown, correctedOhm: corrected });
  return isRight
    ? say('meter-check.right.ohm', { value, rightOhm: right })
    : say('meter-check.off.ohm', { value, rightOhm: right, offSharePct: 100 * off });
}
