/** When a board is ready in a place, by its forecast: every date on screens, in lists and on charts comes from here. */
import { z } from 'zod';
import { DAY_MS, isoOf } from '../../time.ts';
import type { PlaceForecast } from '../../wood/drying/forecast.ts';
import type { PctRange, When } from '../../words/message.ts';

/** Local ISO days. */
export const whenSchema: z.ZodType<When> = z.object({
  likely: z.iso.date(),
  from: z.iso.date(),
  to: z.iso.date().nullable(),
});

export const readySchema = z.discriminatedUnion('kind', [
  /** It is called ready. */
  z.object({ kind: z.literal('now') }),
  /** It is about there; readings will tell. */
  z.object({ kind: z.literal('any-day') }),
  z.object({ kind: z.literal('likely'), when: whenSchema }),
  /** More likely not than so; the first day on which it may be. */
  z.object({ kind: z.literal('unlikely'), earliestOn: z.iso.date() }),
  /** The air there is damper all year than the target. */
  z.object({ kind: z.literal('too-damp') }),
  z.object({ kind: z.literal('not-within') }),
]);
export type Ready = z.infer<typeof readySchema>;

/** The local ISO day of a UTC instant. */
export type DayOf = (instant: string) => string;

/** Whether a place can bring the board into its target: not where even its lowest EMC lies above it. */
export const canReach = (averagePct: number, lowestEmcPct: number | null, { maxPct }: PctRange): boolean =>
  averagePct <= maxPct || lowestEmcPct === null || lowestEmcPct <= maxPct;

/**
 * @param place         its forecast there
 * @param lowestEmcPct  the one that is shown of the place, % MC; null where its air is not known
 * @param averagePct    of the board today, % MC
 * @param nowMs         UTC, ms: the end of the day that the forecast calls today
 */
export function readyIn(
  { reach: { earlyMs, likelyMs, lateMs } }: Pick<PlaceForecast, 'reach'>,
  lowestEmcPct: number | null,
  averagePct: number,
  target: PctRange,
  nowMs: number,
  dayOf: DayOf,
): Ready {
  const day = (atMs: number): string => dayOf(isoOf(atMs));
  const isToday = (atMs: number): boolean => atMs - nowMs < DAY_MS;
  if (!canReach(averagePct, lowestEmcPct, target)) return { kind: 'too-damp' };
  if (likelyMs === null)
    return earlyMs === null || isToday(earlyMs)
      ? { kind: 'not-within' }
      : { kind: 'unlikely', earliestOn: day(earlyMs) };
  if (isToday(likelyMs)) return { kind: 'any-day' };
  const to = lateMs === null ? null : day(lateMs);
  return { kind: 'likely', when: { likely: day(likelyMs), from: day(earlyMs ?? likelyMs), to } };
}

/** The day on which it is likely ready; null where none is named. */
export const whenOf = (ready: Ready | null): When | null => (ready?.kind === 'likely' ? ready.when : null);
