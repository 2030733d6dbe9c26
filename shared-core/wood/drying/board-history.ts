/**
 * Where a board has been: the places it was moved through, each with its year of air, as one sequence of
 * stretches that the drying model can run.
 */
import { z } from 'zod';
import { DAY_MS } from '../../time.ts';
import { emcOfYear } from '../climate/climate.ts';
import { type MeasuredStretch, measuredStretchSchema } from '../climate/measured-air.ts';
import { type MonthlyAir, monthlyAirSchema } from '../climate/monthly-air.ts';
import { dayToDaySchema } from '../climate/station.ts';
import { inYear, midMonthMs, monthBefore } from '../climate/within-year.ts';
import { airMovementSchema, movements } from './air-movement.ts';
import type { AirSegment } from './model/drying-run.ts';

/** What a face of the board meets. */
export const faceExposureSchema = z.enum(['open', 'sun', 'bottom', 'bark', 'sealed']);
export type FaceExposure = z.infer<typeof faceExposureSchema>;

/** How freely a face dries, against an open face between stickers. Common practice, no source. */
export const exposureFactor: Record<FaceExposure, number> = {
  open: 1,
  sun: 1.6,
  bottom: 0.5,
  bark: 0.03,
  sealed: 0,
};

const facesSchema = z.tuple([faceExposureSchema, faceExposureSchema]);
export type Faces = z.infer<typeof facesSchema>;

/** A place where a board was, from an instant until the next stay begins. */
export const staySchema = z.object({
  /** UTC, ms since 1970. */
  fromMs: z.number(),
  air: monthlyAirSchema,
  /** Where its air was measured: rising in time, none over another. Else its months hold. */
  measured: z.array(measuredStretchSchema).optional(),
  /** How the EMC of single days swings there; null or left out where that is not known. */
  days: dayToDaySchema.nullable().optional(),
  /** How the air moves there; as outdoors in the wind where left out. */
  movement: airMovementSchema.optional(),
  /** What face A and face B meet there; both open where not given. */
  faces: facesSchema.optional(),
});
export type Stay = z.infer<typeof staySchema>;

/** What is near a board in a stay, as factors on the pace of one with open faces outdoors in the wind. */
export type Around = {
  /** On what leaves face A and face B. */
  faces: [number, number];
  /** On everything. */
  pace: number;
};

export function aroundOf({
  faces = ['open', 'open'],
  movement = 'wind',
}: Pick<Stay, 'faces' | 'movement'>): Around {
  const { surface, pace } = movements[movement];
  return { faces: [surface * exposureFactor[faces[0]], surface * exposureFactor[faces[1]]], pace };
}

/** A stretch in one air, with what is near the board in it. */
export type StaySegment = AirSegment & { around: Around };

/** 100 years. */
export const LONGEST_HISTORY_DAYS = 36_525;

type AirOfSegment = Omit<AirSegment, 'durationS'>;

/** Boards share what was tabulated for a temperature. */
const tabulatedC = (tempC: number): number => Math.round(tempC * 2) / 2;

/** The air between two instants, both between the middles of the same two months. */
function monthlyAirOf(air: MonthlyAir): (fromMs: number, toMs: number) => AirOfSegment {
  const emc = emcOfYear(air).monthlyEmcPct;
  return (fromMs, toMs) => {
    const month = monthBefore(fromMs);
    const left = midMonthMs(month);
    const right = midMonthMs(month + 1);
    const [a, b] = [inYear(month), inYear(month + 1)];
    // In air without moisture rounding alone would bring it below 0.
    const emcAt = (ms: number): number =>
      Math.max(0, emc[a]! + ((emc[b]! - emc[a]!) * (ms - left)) / (right - left));
    const middle = ((fromMs + toMs) / 2 - left) / (right - left);
    const tempC = air[a]!.tempC + (air[b]!.tempC - air[a]!.tempC) * middle;
    return { emcStartPct: emcAt(fromMs), emcEndPct: emcAt(toMs), tempC: tabulatedC(tempC) };
  };
}

/** The air between two instants of a stretch. */
function measuredAirOf(stretch: MeasuredStretch): (fromMs: number, toMs: number) => AirOfSegment {
  const { emcStartPct, emcEndPct, tempC } = stretch;
  const emcAt = (ms: number): number =>
    emcStartPct + ((emcEndPct - emcStartPct) * (ms - stretch.fromMs)) / (stretch.toMs - stretch.fromMs);
  return (fromMs, toMs) => ({
    emcStartPct: emcAt(fromMs),
    emcEndPct: emcAt(toMs),
    tempC: tabulatedC(tempC),
  });
}

/**
 * The air from one instant to another. Within a month EMC runs straight from the middle of one month to the middle
 * of the next; temperature is held at its mean there, to half a degree. Measured air comes before that of the months.
 *
 * @param stays   rising in time; the first must have begun by `fromMs`
 * @param fromMs  UTC, ms
 * @param toMs    not before `fromMs`, and within 100 years of it
 * @throws        RangeError when a stay is missing or out of order, or months of its air are (`historyProblem` tells)
 */
export function airSegments(stays: readonly Stay[], fromMs: number, toMs: number): StaySegment[] {
  if (!(toMs >= fromMs && toMs - fromMs <= LONGEST_HISTORY_DAYS * DAY_MS)) {
    throw new RangeError('The history must run forward, and for 100 years at most.');
  }
  const first = stays[0];
  if (first === undefined || first.fromMs > fromMs) {
    throw new RangeError('The first stay begins after the history.');
  }
  const segments: StaySegment[] = [];
  for (const [index, stay] of stays.entries()) {
    const next = stays[index + 1];
    if (stay.air.length !== 12) {
      throw new RangeError('A place needs the air of all twelve months.');
    }
    if (next !== undefined && next.fromMs < stay.fromMs)
      throw new RangeError('The moves are not in order of time.');
    const until = Math.min(toMs, next?.fromMs ?? Number.POSITIVE_INFINITY);
    const around = aroundOf(stay);
    const monthly = monthlyAirOf(stay.air);
    let at = Math.max(fromMs, stay.fromMs);
    const goOn = (untilMs: number, air: (fromMs: number, toMs: number) => AirOfSegment): void => {
      if (untilMs <= at) return;
      const durationS = (untilMs - at) / 1000;
      segments.push({ durationS, ...air(at, untilMs), around });
      at = untilMs;
    };
    const byMonths = (untilMs: number): void => {
      while (at < untilMs) goOn(Math.min(untilMs, midMonthMs(monthBefore(at) + 1)), monthly);
    };
    for (const stretch of stay.measured ?? []) {
      if (stretch.toMs <= at) continue;
      if (stretch.fromMs >= until) break;
      byMonths(stretch.fromMs);
      goOn(Math.min(until, stretch.toMs), measuredAirOf(stretch));
    }
    byMonths(until);
  }
  return segments;
}
