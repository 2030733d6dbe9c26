import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ShownValue } from '../../../shared-core/contract/requests/rounds.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse } from '../context.ts';
import type { Commands } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import { checkIsHere } from './moved-away.ts';
import type { MovingReadings } from './moving-readings.ts';

const shownOf = ({ raw, unit, woodTempC }: Reading): ShownValue => ({ raw, unit, woodTempC });

/** What readings truly showed, as a person says, also long after they were saved. */
export function correctingCommands(context: AppContext, assessing: Assessing, moving: MovingReadings) {
  /** @throws Refusal, a question, where that looks like a slip in typing */
  function checkNoSlip(reading: Reading, raw: number): void {
    const judged = assessing.assessCorrected(reading, raw).readings.find(({ id }) => id === reading.id);
    const meant = judged ? meantBy(judged) : null;
    if (meant === null) return;
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
      const now = shownOf(reading);
      const isAsShown = now.raw === shown.raw && now.unit === shown.unit && now.woodTempC === shown.woodTempC;
      orConflict(isAsShown ? null : now);
      const { raw = now.raw, woodTempC = now.woodTempC } = corrected;
      // Nobody mistyped what a meter sent.
      if (raw !== now.raw && reading.how !== 'typed') throw new Refusal(message('refusal.meter-sent-it'));
      if (raw !== now.raw && !isAsMeant) checkNoSlip(reading, raw);
      return yield* moving.amended([reading], (id) => {
        const at = context.now();
        if (raw !== now.raw) amendments.amendReading(id, 'raw', readings.asSaved(reading, raw), at);
        if (woodTempC !== now.woodTempC) amendments.amendReading(id, 'woodTempC', woodTempC, at);
      });
    },
  } satisfies Partial<Commands>;
}
