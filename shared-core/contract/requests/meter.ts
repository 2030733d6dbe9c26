import { z } from 'zod';
import { meterDescriptionSchema } from '../../gatt/meter-description.ts';
import { meterStateSchema } from '../meter.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';

const output = meterStateSchema;
const topics = (): Topic[] => ['meter'];

export const meterRequests = {
  'meter.state': query({ input: nothingSchema, output, topics }),
  'meter.scan': command({ input: nothingSchema, output, topics }),
  'meter.connect': command({ input: z.object({ deviceId: z.string().max(200) }), output, topics }),
  'meter.simulate': command({ input: nothingSchema, output, topics }),
  'meter.disconnect': command({ input: nothingSchema, output, topics }),
  /** How to read the connected meter; saved for the next time. */
  'meter.describe': command({ input: meterDescriptionSchema, output, topics }),
};
