/** What a forecast says of a board in lists. */
import { z } from 'zod';
import { DAY_MS } from '../../time.ts';
import type { Forecast } from '../../wood/drying/forecast.ts';
import { Z_90 } from '../../wood/maths/gaussian.ts';
import type { When } from '../../words/message.ts';
import type { Call } from './assessment.ts';
import { bestElsewhere, whenOf } from './forecast-reasons.ts';

/** Why a reading today would be of use, by the forecast, the most urgent first. */
export const probeWhySchema = z.enum(['should-be-ready', 'may-not-be-ready', 'could-change-call']);
export type ProbeWhy = z.infer<typeof probeWhySchema>;

/** Local ISO days. */
export const whenSchema: z.ZodType<When> = z.object({
  likely: z.iso.date(),
  from: z.iso.date(),
  to: z.iso.date().nullable(),
});

export const outlookSchema = z.object({
  /** Its average today with one standard uncertainty, % MC. */
  averagePct: z.number(),
  standardUncertaintyPct: z.number(),
  /** Probability that it is ready today. */
  probabilityReady: z.number(),
  /** When it is likely ready where it is; null where that is less likely than not. */
  here: whenSchema.nullable(),
  /** The place to which moving it gains most; null where that gains little. */
  elsewhere: z.object({ placeId: z.number().int(), when: whenSchema }).nullable(),
  probeWhy: probeWhySchema.nullable(),
  /** See `PlaceForecast`, of where it is. */
  airOffsetPct: z.number().nullable(),
});
export type Outlook = z.infer<typeof outlookSchema>;

/**
 * @param call    of its latest round; null where it was never probed
 * @param nowMs   UTC, ms: the instant that the forecast calls today
 * @param dayOf   the local ISO day of a UTC instant
 */
export function outlookOf(
  forecast: Pick<Forecast, 'now' | 'places' | 'nextProbe'>,
  call: Call | null,
  nowMs: number,
  dayOf: (instant: string) => string,
): Outlook {
  const { average, probabilityReady } = forecast.now;
  const days = (when: When | null): When | null =>
    when && {
      likely: dayOf(when.likely),
      from: dayOf(when.from),
      to: when.to === null ? null : dayOf(when.to),
    };
  const here = forecast.places[0];
  const best = bestElsewhere(forecast.places);
  const bestWhen = days(best && whenOf(best));
  return {
    averagePct: average.median,
    standardUncertaintyPct: (average.high - average.low) / (2 * Z_90),
    probabilityReady,
    here: days(here ? whenOf(here) : null),
    elsewhere: best && bestWhen && { placeId: best.placeId, when: bestWhen },
    probeWhy: probeWhyOf(forecast, call, nowMs),
    airOffsetPct: here?.airOffsetPct ?? null,
  };
}

/** A board that was never probed, or is to be probed again, needs no forecast to say so. */
export function probeWhyOf(
  { now: { probabilityReady }, nextProbe }: Pick<Forecast, 'now' | 'nextProbe'>,
  call: Call | null,
  nowMs: number,
): ProbeWhy | null {
  if (call === null || call === 'probe-again') return null;
  if (call !== 'ready' && probabilityReady >= 0.5) return 'should-be-ready';
  if (call === 'ready' && probabilityReady < 0.5) return 'may-not-be-ready';
  const isDue = nextProbe.atMs !== null && nextProbe.atMs - nowMs < DAY_MS;
  const couldChange = ['forecast.probe.decides', 'forecast.probe.not-sooner'].includes(nextProbe.why.code);
  return isDue && couldChange && call !== 'ready' ? 'could-change-call' : null;
}
