import { z } from 'zod';
import { meterStateSchema } from './meter.ts';
import { liveSchema, roundChangeSchema, valueNotSavedSchema } from './round.ts';

/** Everything that the machine tells the window unasked. */
export const events = {
  'meter.state': meterStateSchema,
  'meter.live': liveSchema,
  'round.changed': roundChangeSchema,
  'round.notSaved': valueNotSavedSchema,
  /** Stacks, boards, places or settings changed: lists on screen should be asked for again. */
  'yard.changed': z.object({}),
} as const;

export type EventName = keyof typeof events;
export type EventData<N extends EventName> = z.output<(typeof events)[N]>;
