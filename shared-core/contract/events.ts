import { z } from 'zod';
import { bytesHexSchema, packetFromSchema } from '../gatt/source.ts';
import { messageSchema } from '../words/message.ts';
import { meterStateSchema } from './meter.ts';
import {
  insertionReadingSchema,
  liveSchema,
  roundChangeSchema,
  roundOutdatedSchema,
  valueNotSavedSchema,
} from './round.ts';
import { topicsSchema } from './topics.ts';
import { rowIdSchema } from './yard.ts';

/** Everything that the machine sends to windows unasked. */
export const events = {
  'meter.state': meterStateSchema,
  /** Only to the window that holds the meter. */
  'meter.live': liveSchema,
  /**
   * Likewise; null once the pins go in again, or the reading is undone. `wasAway`: the meter was away since it was
   * saved, so the pins may be elsewhere, and nothing saves itself before the meter has shown them out. `isMissed`: their
   * value settled while no round was open, so it did not save itself. `beganOn`: the board
   * in hand when they went in; null where none was.
   */
  'meter.insertion': z.object({
    reading: insertionReadingSchema.nullable(),
    wasAway: z.boolean(),
    isMissed: z.boolean(),
    beganOn: rowIdSchema.nullable(),
  }),
  /** Likewise; the button on the meter was pressed, which saves what it shows. */
  'meter.pressed': z.object({}),
  /** Likewise, while the meter waits to be described: what it sent since the last time, by place and oldest first. */
  'meter.packets': z.object({
    /** Now, on the clock of `atMs`, which only runs forward. */
    nowMs: z.number(),
    packets: z.array(z.object({ from: packetFromSchema, bytesHex: bytesHexSchema, atMs: z.number() })),
  }),
  'round.changed': roundChangeSchema,
  'round.outdated': roundOutdatedSchema,
  'round.notSaved': valueNotSavedSchema,
  /** Everything is saved, but what follows from it cannot be brought up to date for now; null once it is. */
  'updates.delayed': z.object({ problem: messageSchema.nullable() }),
  /** How far long work of the window is; `total` of whatever it counts. */
  'work.progress': z.object({
    work: z.uuid(),
    done: z.number().int().min(0),
    total: z.number().int().min(0),
  }),
  /**
   * Another window changes many boards in one act, of which some are changed and some are not yet: how far it is, of
   * whatever it counts; null once it is done. Told every half second.
   */
  'work.ofOther': z.object({
    progress: z.object({ done: z.number().int().min(0), total: z.number().int().min(0) }).nullable(),
  }),
  /** What is shown of these topics may be another now: ask again. */
  changed: z.object({
    /** Of which yard; null where none is open. */
    yard: z.uuid().nullable(),
    topics: topicsSchema,
  }),
} as const;

export type EventName = keyof typeof events;
export type EventData<N extends EventName> = z.output<(typeof events)[N]>;
