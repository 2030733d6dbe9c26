/** When a stack is probed next, and whether that day has come. */
import { z } from 'zod';
import { instantSchema, isoOf } from '../../time.ts';
import { message } from '../../words/message.ts';
import { oldByMs } from '../calls/old-readings.ts';
import type { DayOf } from '../calls/ready-in.ts';
import type { StackDue } from './stack-call.ts';

export const nextProbeSchema = z.object({
  /** When readings of its boards are next of use by the forecasts, UTC, ms; null where none says so. */
  forecastMs: z.number().nullable(),
  /** Of boards that are not ready, and of which no forecast names such a day: the oldest latest reading. */
  oldestReadAt: instantSchema.nullable(),
  /** The ID of the only one that was read by that day, where others of the stack were read later; null elsewhere. */
  oldestCode: z.string().nullable(),
});
export type NextProbe = z.infer<typeof nextProbeSchema>;

interface Waiting {
  due: StackDue | null;
  isForecasting: boolean;
  nextProbe: NextProbe;
  lastProbedAt: string | null;
}

export interface ProbeDay {
  /** UTC, ms. */
  atMs: number;
  /** Where it is because a reading is old: when that was taken. */
  readAt: string | null;
}

/** @returns null where nothing asks for it, or forecasts are still to say */
export function probeDayOf({
  nextProbe: { forecastMs, oldestReadAt },
  isForecasting,
}: Pick<Waiting, 'nextProbe' | 'isForecasting'>): ProbeDay | null {
  const oldMs = oldestReadAt === null || isForecasting ? null : oldByMs(oldestReadAt);
  if (oldMs !== null && (forecastMs === null || oldMs < forecastMs))
    return { atMs: oldMs, readAt: oldestReadAt };
  return forecastMs === null ? null : { atMs: forecastMs, readAt: null };
}

/** Whether that reading is of some of its boards, and others were read on a later day. */
export const isOfSome = (
  { lastProbedAt }: Pick<Waiting, 'lastProbedAt'>,
  { readAt }: ProbeDay,
  dayOf: DayOf,
): boolean => readAt !== null && lastProbedAt !== null && dayOf(lastProbedAt) !== dayOf(readAt);

/**
 * What a stack is due for today: a probe of its boards, or a probe whose day has come, before any move. One that may check in
 * a heated room is moved first.
 *
 * @param nowMs  UTC, ms: the end of today
 */
export function dueToday(stack: Waiting, nowMs: number, dayOf: DayOf): StackDue | null {
  const { due } = stack;
  const isBeforeIt = due === null || due.kind === 'bring-in' || due.kind === 'add-place';
  const probe = isBeforeIt ? probeDayOf(stack) : null;
  if (probe === null || probe.atMs > nowMs) return due;
  const { readAt } = probe;
  const dueOn = dayOf(isoOf(probe.atMs));
  const when = dueOn === dayOf(isoOf(nowMs)) ? ('today' as const) : ('overdue' as const);
  const { oldestCode } = stack.nextProbe;
  const overdue =
    readAt === null
      ? message('stack-call.probe-day', { when, dueOn })
      : message('stack-call.probe-old', {
          when,
          dueOn,
          probedOn: readAt,
          which: !isOfSome(stack, probe, dayOf) ? 'all' : oldestCode === null ? 'some' : 'one',
          boardCode: oldestCode ?? '',
        });
  return {
    kind: 'overdue',
    why: due === null ? overdue : message('stack-call.overdue-then', { whySentences: [overdue, due.why] }),
  };
}
