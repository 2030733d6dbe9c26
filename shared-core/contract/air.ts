import { z } from 'zod';
import { instantSchema } from '../time.ts';
import { measuredDaySchema } from '../wood/climate/measured-air.ts';
import { messageSchema } from '../words/message.ts';
import { nameSchema, rowIdSchema, versionSchema } from './yard.ts';

/** `air`: a hygrometer with a thermometer, at a place. `probe`: a thermometer whose probe is in the wood. */
export const sensorKindSchema = z.enum(['air', 'probe']);
export type SensorKind = z.infer<typeof sensorKindSchema>;

/** What a sensor said at an instant; null where it says nothing of it. */
export const sensedSchema = z.object({
  at: instantSchema,
  tempC: z.number().nullable(),
  rh: z.number().nullable(),
});
export type Sensed = z.infer<typeof sensedSchema>;

export const sensorSchema = z.object({
  id: rowIdSchema,
  version: versionSchema,
  name: nameSchema,
  deviceId: z.string().min(1).max(80),
  kind: sensorKindSchema,
  /** Where it is; null at no place. */
  placeId: rowIdSchema.nullable(),
  /** Null of one that was never at a place. */
  since: instantSchema.nullable(),
  /** The newest that it logged or that was heard of it. */
  last: sensedSchema.nullable(),
});
export type Sensor = z.infer<typeof sensorSchema>;

/** A thermometer in reach. */
const nearSensorSchema = z.object({
  deviceId: z.string(),
  /** Empty where it gives itself none. */
  name: z.string(),
  rssiDbm: z.number().nullable(),
});

/** What is in reach, as far as it was looked for. */
export const nearSensorsSchema = z.object({
  isSearching: z.boolean(),
  /** What has the radio, so that nothing can be looked for; null where it is free. */
  busyWith: z.enum(['meter', 'meter-search']).nullable(),
  /** Why nothing can be heard, as without Bluetooth; null where it can. */
  problem: messageSchema.nullable(),
  /** The strongest first. */
  sensors: z.array(nearSensorSchema),
});
export type NearSensors = z.infer<typeof nearSensorsSchema>;

/** What a person gave for a whole day. */
const typedAirSchema = z.object({
  id: rowIdSchema,
  at: instantSchema,
  tempC: z.number(),
  rh: z.number(),
  /** Another value was given for its day later. That one counts. */
  isOutdated: z.boolean(),
});
export type TypedAir = z.infer<typeof typedAirSchema>;

/** The air of a place as it was measured there. */
export const placeAirLogSchema = z.object({
  /** Rising in time; the newest `MOST_DAYS_SHOWN`. */
  days: z.array(measuredDaySchema),
  /** What a person gave for days among these, rising in time. */
  typed: z.array(typedAirSchema),
  /** Of the whole log: the first day that is used, and how many are. */
  from: instantSchema.nullable(),
  usedDays: z.number().int(),
  /** The newest value. Of its day: a person gave it, and maybe no time. */
  last: sensedSchema.extend({ isOfDay: z.boolean() }).nullable(),
  /** How far it puts the months of the place, % MC of EMC; 0 where nothing is used. */
  shiftPct: z.number(),
});
export type PlaceAirLog = z.infer<typeof placeAirLogSchema>;
