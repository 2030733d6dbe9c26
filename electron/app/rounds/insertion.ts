import type { InsertionReading } from '../../../shared-core/contract/round.ts';
import type { AppContext } from '../context.ts';
import type { MeterDesk } from '../meter/meter-desk.ts';

/** Which reading the pins that are in were saved as: one insertion is one reading. */
export function createInsertion(context: AppContext, { values, holder }: MeterDesk) {
  let isTaken = false;
  /** The button on the meter was pressed for these pins before anything was saved of them. */
  let isPressed = false;
  let reading: InsertionReading | null = null;

  function tell(): void {
    const window = holder.window();
    if (window !== null) context.emitTo(window, 'meter.insertion', { reading });
  }
  function show(next: InsertionReading | null): void {
    if (reading === null && next === null) return;
    reading = next;
    tell();
  }
  function end(): void {
    isTaken = false;
    isPressed = false;
    show(null);
  }
  values.values.follow(({ inserted, phase }) => {
    if (inserted || phase === 'pins-out') end();
  });
  values.lost.follow(end);
  values.pressed.follow(() => {
    // A meter that holds its value does not show the pins going elsewhere: pressed again, it is another insertion.
    if (isTaken && isPressed) end();
    isPressed = !isTaken;
    const window = holder.window();
    if (window !== null) context.emitTo(window, 'meter.pressed', {});
  });
  holder.changed.follow(tell);

  return {
    /** A value was saved since the pins last went in, so none saves itself before they go in again. */
    isTaken: (): boolean => isTaken,
    /** Null once that reading was undone. */
    reading: (): InsertionReading | null => reading,
    /** The first reading of an insertion is the one; another only replaces it. */
    take: (saved: InsertionReading): void => {
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
