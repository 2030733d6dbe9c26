import type { InsertionReading } from '../../../shared-core/contract/round.ts';
import type { AppContext } from '../context.ts';
import type { MeterDesk } from '../meter/meter-desk.ts';

/** Which reading the pins that are in were saved as: one insertion is one reading. */
export function createInsertion(context: AppContext, { values, holder, link }: MeterDesk) {
  let isTaken = false;
  /** The meter that was live then; null for none. */
  let takenWith: number | null = null;
  /** The meter was away since these pins were saved: nobody knows whether they are still where they were. */
  let wasAway = false;
  /** The button on the meter was pressed for these pins before anything was saved of them. */
  let isPressed = false;
  let reading: InsertionReading | null = null;

  function tell(): void {
    const window = holder.window();
    if (window !== null) context.emitTo(window, 'meter.insertion', { reading, wasAway });
  }
  function show(next: InsertionReading | null, isAfterLoss = false): void {
    if (reading === null && next === null && wasAway === isAfterLoss) return;
    reading = next;
    wasAway = isAfterLoss;
    tell();
  }
  function end(): void {
    isTaken = false;
    isPressed = false;
    show(null);
  }
  values.values.follow(({ inserted, phase, meterId }) => {
    if (inserted || phase === 'pins-out' || (isTaken && meterId !== takenWith)) end();
  });
  // A person may save what the meter shows then; by itself it could be the same push at the next spot.
  values.lost.follow(() => show(null, isTaken));
  link.left.follow(() => show(null, isTaken));
  values.pressed.follow(() => {
    // A meter that holds its value does not show the pins going elsewhere: pressed again, it is another insertion.
    if (isTaken && isPressed) end();
    isPressed = !isTaken;
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
    /** Null once that reading was undone. */
    reading: (): InsertionReading | null => reading,
    /** The first reading of an insertion is the one; another only replaces it. */
    take: (saved: InsertionReading): void => {
      if (!isTaken) takenWith = values.newest()?.meterId ?? null;
      isTaken = true;
      if (reading === null) show(saved);
    },
    /** The reading is excluded: a person may save the same insertion again, as they say where. */
    free: (readingId: number): void => {
      if (reading?.readingId === readingId) show(null);
    },
    end,
  };
}
export type Insertion = ReturnType<typeof createInsertion>;
