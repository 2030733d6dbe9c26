import { z } from 'zod';
import {
  nearSensorsSchema,
  placeAirLogSchema,
  sensedSchema,
  sensorKindSchema,
  sensorSchema,
} from '../air.ts';
import { command, nothingSchema, ofWindow, query } from '../request-kinds.ts';
import type { Topic } from '../topics.ts';
import { daySchema, editOf, nameSchema, rowIdSchema, versionSchema } from '../yard.ts';

const airTopics = (): Topic[] => ['sensors', 'places', 'outlooks'];

/** Thermometers and hygrometers, and the air that was measured at places. */
export const airRequests = {
  /** Those that were not removed. */
  'sensors.list': query({
    input: nothingSchema,
    output: z.array(sensorSchema),
    topics: () => ['sensors', 'places'],
  }),
  /** Thermometers and hygrometers in reach. */
  'sensors.near': query({
    input: nothingSchema,
    output: nearSensorsSchema,
    topics: () => ['sensors'],
  }),
  /** Looks for some, for two minutes at most. */
  'sensors.search': ofWindow(
    command({
      input: z.object({ isOn: z.boolean() }),
      output: nearSensorsSchema,
      topics: () => ['sensors'],
    }),
  ),
  /** What one says now; refused where it says nothing, or a meter has the radio. */
  'sensors.read': ofWindow(
    command({
      input: z.object({ id: rowIdSchema }),
      output: sensedSchema,
      topics: () => ['sensors'],
    }),
  ),
  'sensors.add': command({
    input: z.object({
      name: nameSchema,
      deviceId: sensorSchema.shape.deviceId,
      kind: sensorKindSchema,
      /** Where it is from now on; null of a probe. */
      placeId: rowIdSchema.nullable(),
    }),
    output: sensorSchema,
    topics: airTopics,
  }),
  'sensors.edit': command({
    input: editOf(z.object({ name: nameSchema })),
    output: sensorSchema,
    topics: () => ['sensors'],
  }),
  /** From that local day on it is at another place, or at none. What it logged since then is of that place. */
  'sensors.move': command({
    input: z.object({ id: rowIdSchema, placeId: rowIdSchema.nullable(), sinceOn: daySchema }),
    output: sensorSchema,
    topics: airTopics,
  }),
  /** It is not read any more. What it logged stays with its places. */
  'sensors.remove': command({
    input: z.object({ id: rowIdSchema, basedOn: versionSchema }),
    output: z.object({ act: z.uuid() }),
    topics: airTopics,
  }),
  /** What a hygrometer without radio shows. It counts for its local day. */
  'air.type': command({
    input: z.object({
      placeId: rowIdSchema,
      measuredOn: daySchema,
      tempC: z.number().min(-60).max(60),
      rh: z.number().min(0).max(1),
    }),
    output: z.object({ act: z.uuid() }),
    topics: airTopics,
  }),
  'air.ofPlace': query({
    input: z.object({ placeId: rowIdSchema }),
    output: placeAirLogSchema,
    topics: () => ['sensors', 'places'],
  }),
};
