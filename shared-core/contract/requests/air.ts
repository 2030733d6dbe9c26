import { z } from 'zod';
import { probeTempSchema } from '../../probing/readings/reading.ts';
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

/** What a person reads off a hygrometer. */
const typedAirInput = z.object({
  measuredOn: daySchema,
  tempC: z.number().min(-60).max(60),
  rh: z.number().min(0).max(1),
  /** The answer to the question whether it replaces what that day has. */
  isReplacing: z.boolean().default(false),
});
/** Days, by UTC, both included. */
const airPeriod = z.object({ placeId: rowIdSchema, fromOn: daySchema, toOn: daySchema });

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
  /** What a probe in reach says of the wood now; null where none says anything. Readings of a round take it. */
  'sensors.probe': query({
    input: nothingSchema,
    output: probeTempSchema.nullable(),
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
  /**
   * What a hygrometer without radio shows. It counts for its local day, in place of what sensors log on it. Where that day
   * has another value, the refusal asks whether to replace it.
   */
  'air.type': command({
    input: typedAirInput.extend({ placeId: rowIdSchema }),
    output: z.object({ act: z.uuid() }),
    topics: airTopics,
  }),
  /** Another day or value for one that was typed. */
  'air.edit': command({
    input: typedAirInput.extend({ id: rowIdSchema }),
    output: z.object({ act: z.uuid() }),
    topics: airTopics,
  }),
  'air.delete': command({
    input: z.object({ id: rowIdSchema }),
    output: z.object({ act: z.uuid() }),
    topics: airTopics,
  }),
  /** Nothing that sensors logged on measured days from the first to the last is used, until those are included again. */
  'air.exclude': command({
    input: airPeriod,
    output: z.object({ act: z.uuid(), days: z.number().int() }),
    topics: airTopics,
  }),
  'air.include': command({
    input: airPeriod,
    output: z.object({ act: z.uuid(), days: z.number().int() }),
    topics: airTopics,
  }),
  'air.ofPlace': query({
    input: z.object({ placeId: rowIdSchema }),
    output: placeAirLogSchema,
    topics: () => ['sensors', 'places'],
  }),
};
