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
});
export type Outlook = z.infer<typeof outlookSchema>;

export function outlookOf(
  { now: { average } }: { now: Pick<Forecast['now'], 'average'> },
  judgement: Judgement,
): Outlook {
  return {
    averagePct: average.median,
    standardUncertaintyPct: (average.high - average.low) / (2 * Z_90),
    judgement,
  };
}
