import { isDeepStrictEqual } from 'node:util';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { shownValueOf } from '../../../shared-core/contract/requests/rounds.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { intendedValue, meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { isBeyondScales } from '../../../shared-core/probing/suspicions/reading-suspicions.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse } from '../context.ts';
import type { Commands } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import { checkIsHere } from './moved-away.ts';
import type { MovingReadings } from './moving-readings.ts';

/** What readings truly showed, as a person says, also long after they were saved. */
export function correctingCommands(context: AppContext, assessing: Assessing, moving: MovingReadings) {
  /** @throws Refusal, a question, where that looks like a slip in typing, or is no moisture content */
  function checkNoSlip(reading: Reading, value: { raw: number; isAbove: boolean }): void {
    const { raw } = value;
    const judged = assessing.assessCorrected(reading, value).readings.find(({ id }) => id === reading.id);
    if (judged === undefined) return;
    const refused = judged.suspicions.find(({ severity }) => severity === 'refused');
    const isNone = refused?.rule === 'not-a-reading' || (reading.unit === 'pct' && isBeyondScales(raw));
    // What is none is a slip, though what was meant is far from the board's other readings.
    const meant = meantBy(judged) ?? (isNone && reading.unit === 'pct' ? intendedValue(raw, []) : null);
    if (meant === null) {
      if (!isNone || refused === undefined) return;
      throw new Refusal(message('refusal.correction-unused', { why: refused.why }));
    }
    throw new Refusal(
      reading.unit === 'ohm'
        ? message('refusal.correction-slip.ohm', { rawOhm: raw, rawMeantOhm: meant })
        : message('refusal.correction-slip', { rawPct: raw, rawMeantPct: meant }),
    );
  }

  return {
    *'readings.correct'({ readingId, corrected, shown, isAsMeant }) {
      const { readings, amendments } = context.yard();
      const reading = orRefuse(readings.get(readingId), 'reading');
      checkIsHere(context, reading);
      const now = shownValueOf(reading);
      orConflict(isDeepStrictEqual(now, shown) ? null : now);
      const { raw = now.raw, woodTempC = now.woodTempC } = corrected;
      const { isAbove = corrected.raw === undefined && now.isAbove } = corrected;
      const isOther = raw !== now.raw || isAbove !== now.isAbove;
      // Nobody mistyped what a meter sent.
      if (isOther && reading.how !== 'typed') throw new Refusal(message('refusal.meter-sent-it'));
      if (isOther && !isAsMeant) checkNoSlip(reading, { raw, isAbove });
      return yield* moving.amended([reading], (id) => {
        const at = context.now();
        const amended = isOther ? readings.valueAmended(reading, { raw, isAbove }) : {};
        if (amended.raw !== undefined) amendments.amendReading(id, 'raw', amended.raw, at);
        if (amended.isAbove !== undefined) amendments.amendReading(id, 'isAbove', amended.isAbove, at);
        if (woodTempC !== now.woodTempC) amendments.amendReading(id, 'woodTempC', woodTempC, at);
      });
    },
  } satisfies Partial<Commands>;
}
