import type { MeterCheck } from '../../../shared-core/contract/meter-checks.ts';
import { offShown, withoutOff } from '../../../shared-core/probing/readings/meter-check.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import type { Say } from '../../../shared-core/words/words.ts';

/** How far off a meter is once its values are corrected. */
export const offOf = ({ off, correctedBy }: MeterCheck, unit: ReadingUnit): number =>
  offShown(unit, off - correctedBy);

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
