/** What a forecast says of a board in lists. */
import { z } from 'zod';
import type { Forecast } from '../../wood/drying/forecast.ts';
import { Z_90 } from '../../wood/maths/gaussian.ts';
import type { When } from '../../words/message.ts';
import { bestElsewhere, whenOf } from './forecast-reasons.ts';
import { type NextStepFacts, nextStepOf, nextStepSchema } from './next-step.ts';

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
  next: nextStepSchema,
  /** See `PlaceForecast`, of where it is. */
  airOffsetPct: z.number().nullable(),
});
export type Outlook = z.infer<typeof outlookSchema>;

/**
 * @param latest  see `NextStepFacts`
 * @param nowMs   UTC, ms: the end of the day that the forecast calls today
 * @param dayOf   the local ISO day of a UTC instant
 */
export function outlookOf(
  forecast: Pick<Forecast, 'now' | 'places' | 'nextProbe'>,
  latest: NextStepFacts['latest'],
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
    next: nextStepOf({ latest, forecast, nowMs }),
    airOffsetPct: here?.airOffsetPct ?? null,
  };
}
