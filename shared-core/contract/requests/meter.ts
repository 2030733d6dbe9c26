import { z } from 'zod';
import { meterDescriptionSchema, startSchema } from '../../gatt/meter-description.ts';
import { meterStateSchema } from '../meter.ts';
import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';

const output = meterStateSchema;
const topics = (): Topic[] => ['meter'];
const topicsOfMeters = (): Topic[] => ['meter', 'meters'];

export const meterRequests = {
  'meter.state': ofMachine(query({ input: nothingSchema, output, topics })),
  'meter.scan': ofMachine(command({ input: nothingSchema, output, topics })),
  'meter.connect': ofMachine(command({ input: z.object({ deviceId: z.string().max(200) }), output, topics })),
  'meter.simulate': ofMachine(command({ input: nothingSchema, output, topics })),
  'meter.disconnect': ofMachine(command({ input: nothingSchema, output, topics })),
  /** From now on its values go to the window that asks. */
  'meter.hold': ofMachine(command({ input: nothingSchema, output, topics })),
  /** Watches what it advertises, without a connection. */
  'meter.listen': ofMachine(command({ input: z.object({ deviceId: z.string().max(200) }), output, topics })),
  /** Writes what may make a meter send that is not described yet. */
  'meter.tryStart': ofMachine(command({ input: startSchema, output, topics })),
  /** Everything that the connected meter sends is watched again, to set it up again; what is saved of it stays. */
  'meter.watch': ofMachine(command({ input: nothingSchema, output, topics })),
  /** The connected meter is none of those that it may be. */
  'meter.isAnother': command({
    input: z.object({ deviceId: z.string().max(200) }),
    output,
    topics: topicsOfMeters,
  }),
  /** How to read the connected meter; saved for the next time. */
  'meter.describe': command({ input: meterDescriptionSchema, output, topics: topicsOfMeters }),
};
