import { z } from 'zod';
import { meterStateSchema } from './meter.ts';
import { liveSchema, roundChangeSchema, valueNotSavedSchema } from './round.ts';
import { topicsSchema } from './topics.ts';

/** Everything that the machine sends to windows unasked. */
export const events = {
  'meter.state': meterStateSchema,
  'meter.live': liveSchema,
  'round.changed': roundChangeSchema,
  'round.notSaved': valueNotSavedSchema,
  /** What is shown of these topics may be another now: ask again. */
  changed: z.object({
    /** Of which yard; null where none is open. */
    yard: z.uuid().nullable(),
    topics: topicsSchema,
  }),
} as const;

export type EventName = keyof typeof events;
export type EventData<N extends EventName> = z.output<(typeof events)[N]>;
