import type { InsertionReading } from '../../../shared-core/contract/round.ts';
import { isJump } from '../../../shared-core/probing/readings/settle.ts';
import type { AppContext } from '../context.ts';
import type { MeterDesk } from '../meter/meter-desk.ts';
import type { Aims } from './aims.ts';
import type { ReadingValue } from './saving.ts';

interface Taken {
  reading: InsertionReading;
  value: Pick<ReadingValue, 'raw' | 'unit'>;
}

/** Which reading the pins that are in were saved as: one insertion is one reading. */
export function createInsertion(context: AppContext, { values, holder, link }: MeterDesk, aims: Aims) {
  let isTaken = false;
  /** The meter that was live then; null for none. */
  let takenWith: number | null = null;
  /** The meter was away since these pins were saved: nobody knows whether they are still where they were. */
  let wasAway = false;
  /** Their value settled while no round was open that it could be saved in. */
  let isMissed = false;
  /** The button on the meter was pressed for these pins before anything was saved of them. */
  let isPressed = false;
  let taken: Taken | null = null;
  /** The board in hand when they went in; null where none was, and with the pins out. */
  let beganOn: number | null = null;

  function tell(): void {
    const window = holder.window();
    const reading = taken?.reading ?? null;
    if (window !== null) context.emitTo(window, 'meter.insertion', { reading, wasAway, isMissed, beganOn });
  }
  function show(next: Taken | null, isAfterLoss = false, isUnsaved = false): void {
    const isNone = taken === null && next === null;
    if (isNone && wasAway === isAfterLoss && isMissed === isUnsaved) return;
    taken = next;
    wasAway = isAfterLoss;
    isMissed = isUnsaved;
    tell();
  }
  function end(): void {
    isTaken = false;
    isPressed = false;
    show(null);
  }
  function begin(isIn: boolean): void {
    const window = isIn ? holder.window() : null;
    const board = window === null ? null : (aims.of(window)?.boardId ?? null);
    if (board === beganOn) return;
    beganOn = board;
    tell();
  }
  const isLive = (): boolean => link.current().state.phase === 'live';
  values.values.follow(({ inserted, phase, meterId, value, unit }) => {
    if (inserted || phase === 'pins-out' || (isTaken && meterId !== takenWith)) {
      end();
      if (inserted || phase === 'pins-out') begin(inserted);
    }
    // So far from what was saved, they are elsewhere. It does not save itself: nobody saw them move.
    else if (wasAway && taken && phase === 'settled' && value !== null && unit === taken.value.unit)
      if (isJump(unit, taken.value.raw, value)) show(null, true);
  });
  // A person says whether they are the same pins; by itself it could be the same push at the next spot.
  values.lost.follow(() => show(taken, isTaken));
  link.left.follow(() => show(taken, isTaken));
  values.pressed.follow(({ mayHaveMoved }) => {
    // A meter that held its value so long did not show the pins going elsewhere: pressed again, it is another insertion.
    if (isTaken && isPressed && mayHaveMoved) end();
    isPressed ||= !isTaken;
    const window = holder.window();
    if (window !== null) context.emitTo(window, 'meter.pressed', {});
  });
  holder.changed.follow(tell);

  return {
    /**
     * A value was saved since the pins last went in, so none saves itself before they go in again: where the meter was
     * away, before it has shown them out.
     */
    isTaken: (): boolean => isTaken,
    wasAway: (): boolean => wasAway,
    /** Their board, whether or not anything was saved of them. */
    beganOn: (): number | null => beganOn,
    /** Null once that reading was undone. */
    reading: (): InsertionReading | null => taken?.reading ?? null,
    /** The first reading of an insertion is the one; another only replaces it, or is of other pins after a loss. */
    take: (reading: InsertionReading, value: Taken['value']): void => {
      const isOther = taken === null || wasAway;
      if (!isTaken || isOther) takenWith = values.newest()?.meterId ?? null;
      isTaken = true;
      beganOn = reading.boardId;
      if (isOther) show({ reading, value }, !isLive());
    },
    /** Their value settled and nothing was saved, as no round was open. */
    miss: (): void => show(taken, wasAway, true),
    /** The reading is excluded: a person may save the same insertion again, as they say where. */
    free: (readingId: number): void => {
      if (taken?.reading.readingId === readingId) show(null);
    },
    tell,
    end,
  };
}
export type Insertion = ReturnType<typeof createInsertion>;
