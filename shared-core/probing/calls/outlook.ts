/** What is saved of a board's forecast, for lists. */
import { z } from 'zod';
import type { Forecast } from '../../wood/drying/forecast.ts';
import { Z_90 } from '../../wood/maths/gaussian.ts';
import { type Judgement, judgementSchema } from './judgement.ts';

export const outlookSchema = z.object({
  /** Its average today with one standard uncertainty, % MC. */
  averagePct: z.number(),
  standardUncertaintyPct: z.number(),
  judgement: judgementSchema,
  /** See `PlaceForecast`, of where it is. */
  airOffsetPct: z.number().nullable(),
});
export type Outlook = z.infer<typeof outlookSchema>;

export function outlookOf(
  { now: { average }, places }: Pick<Forecast, 'now' | 'places'>,
  judgement: Judgement,
): Outlook {
  return {
    averagePct: average.median,
    standardUncertaintyPct: (average.high - average.low) / (2 * Z_90),
    judgement,
    airOffsetPct: places[0]?.airOffsetPct ?? null,
  };
}
