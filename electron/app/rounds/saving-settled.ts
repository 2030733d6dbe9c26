import { randomUUID } from 'node:crypto';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { readingTopics } from '../../../shared-core/contract/requests/rounds.ts';
import { message } from '../../../shared-core/words/message.ts';
import { hashOf } from '../acting.ts';
import type { AppContext } from '../context.ts';
import { faultMessage } from '../fault-message.ts';
import type { LiveValue } from '../meter/live-values.ts';
import type { MeterDesk } from '../meter/meter-desk.ts';
import { settingsOf } from '../yard/settings.ts';
import type { Aims, WindowAim } from './aims.ts';
import type { Insertion } from './insertion.ts';
import type { OpenRounds } from './open-rounds.ts';
import { liveReading, type ReadingSpot, type Saving } from './saving.ts';

/** Saves what settles where the window aims that holds the meter, and nowhere else. */
export function createSavingSettled(
  context: AppContext,
  { values, holder }: MeterDesk,
  aims: Aims,
  openRounds: OpenRounds,
  insertion: Insertion,
  saving: Saving,
): void {
  /** What other windows read since the pins went in. */
  let filledElsewhere: ReadingSpot[] = [];
  values.values.follow(({ inserted, phase }) => {
    if (inserted || phase === 'pins-out') filledElsewhere = [];
  });
  saving.filled.follow(({ window, at }) => {
    if (window !== holder.window()) filledElsewhere.push(at);
  });

  /** Nobody asked for a value that saves itself, so nobody can be answered: an event says that it failed. */
  function tellNotSaved(window: string, { roundId }: WindowAim, error: unknown): void {
    const undone = { undone: message('refusal.value-not-saved'), again: message('refusal.press-space') };
    const problem = faultMessage(error, undone, context.reportFault);
    context.emitTo(window, 'round.notSaved', { roundId, problem });
  }

  values.settled.follow((live) => {
    if (live.isUnconfirmed || insertion.isTaken()) return;
    const window = holder.window();
    const aim = window === null ? null : aims.of(window);
    // As while the window is loaded again: once it is back, the person says whether that is where it goes.
    if (window === null || aim === null) insertion.miss();
    else save(live, window, aim);
  });

  function save(live: LiveValue, window: string, aim: WindowAim): void {
    if (aim.spotIndex === null) return;
    try {
      if (!settingsOf(context.yard()).saveWhenSettled || openRounds.get(aim.roundId).isDated) return;
      const at = { roundId: aim.roundId, boardId: aim.boardId, spotIndex: aim.spotIndex };
      const isFilled = filledElsewhere.some(
        ({ boardId, spotIndex }) => boardId === at.boardId && spotIndex === at.spotIndex,
      );
      if (isFilled) {
        const { code: boardCode } = openRounds.board(at.roundId, at.boardId);
        throw new Refusal(message('refusal.spot-changed', { boardCode }));
      }
      const value = liveReading(live, 'settled');
      const act = {
        id: randomUUID(),
        request: 'rounds.saveSettled',
        inputHash: hashOf([at, value]),
        who: window,
      };
      const { output, failures } = context.act(act, () => saving.save(window, at, value));
      for (const failure of failures) context.delays.tell(window, failure);
      context.changed([...readingTopics(output), 'acts']);
    } catch (error) {
      tellNotSaved(window, aim, error);
    }
  }
}
