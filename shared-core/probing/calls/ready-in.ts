/** When a board is ready in a place, by its forecast: every date on screens, in lists and on charts comes from here. */
import { z } from 'zod';
import { DAY_MS, isoOf } from '../../time.ts';
import type { PlaceForecast } from '../../wood/drying/forecast.ts';
import { isShownAbove } from '../../wood/moisture/shown-points.ts';
import type { PctRange, When } from '../../words/message.ts';
import { NEVER_QUITE_PCT } from './never-quite.ts';

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
  /** More likely not than so; when it is likeliest, and the driest that it gets, % MC: one figure for a place wherever it is named. */
  z.object({
    kind: z.literal('unlikely'),
    best: z.object({ from: z.iso.date(), to: z.iso.date() }),
    driestPct: z.number(),
  }),
  /** The air there is damper all year than the target. */
  z.object({ kind: z.literal('too-damp'), driestPct: z.number() }),
  /** `driestPct` is null where it dries to the target and stays uneven, or below it. */
  z.object({ kind: z.literal('not-within'), driestPct: z.number().nullable() }),
  /**
   * Dry enough today, it takes up more moisture there than its target allows. One that is too dry goes through the target
   * first; `entersOn` is null for any other.
   */
  z.object({ kind: z.literal('leaves'), entersOn: z.iso.date().nullable(), leavesOn: z.iso.date() }),
]);
export type Ready = z.infer<typeof readySchema>;

/** The local ISO day of a UTC instant. */
export type DayOf = (instant: string) => string;

/** Whether a place can bring the board into its target: not where even its lowest EMC lies above it. */
export const canReach = (averagePct: number, lowestEmcPct: number | null, { maxPct }: PctRange): boolean =>
  !isShownAbove(averagePct, maxPct) || lowestEmcPct === null || lowestEmcPct <= maxPct;

/** The driest that a place gets the board, % MC. */
export const driestIn = ({ band }: Pick<PlaceForecast, 'band'>): number =>
  Math.min(...band.average.map(({ median }) => median));

/** When a board that is dry enough goes above its target there, within a year and by a margin that matters, UTC, ms; null where it does not. */
function leavesAtMs(
  { band }: Pick<PlaceForecast, 'band'>,
  { maxPct }: PctRange,
  nowMs: number,
): number | null {
  const year = band.average.filter((_, at) => band.atMs[at]! <= nowMs + 365 * DAY_MS);
  if (year.every(({ median }) => median <= maxPct + NEVER_QUITE_PCT)) return null;
  return band.atMs[year.findIndex(({ median }) => median > maxPct)]!;
}

/** When a board that is too dry comes into its target there, UTC, ms; null where it is not too dry, or never does. */
export function entersAtMs(
  { band }: Pick<PlaceForecast, 'band'>,
  averagePct: number,
  { minPct }: PctRange,
): number | null {
  if (!isShownAbove(minPct, averagePct)) return null;
  return band.atMs[band.average.findIndex(({ median }) => !isShownAbove(minPct, median))] ?? null;
}

/**
 * @param place         its forecast there
 * @param lowestEmcPct  the one that is shown of the place, % MC; null where its air is not known
 * @param averagePct    of the board today, % MC
 * @param nowMs         UTC, ms: the end of the day that the forecast calls today
 */
export function readyIn(
  place: Pick<PlaceForecast, 'reach' | 'best' | 'band'>,
  lowestEmcPct: number | null,
  averagePct: number,
  target: PctRange,
  nowMs: number,
  dayOf: DayOf,
): Ready {
  const { earlyMs, likelyMs, lateMs } = place.reach;
  const day = (atMs: number): string => dayOf(isoOf(atMs));
  const isToday = (atMs: number): boolean => atMs - nowMs < DAY_MS;
  const driestPct = driestIn(place);
  if (!canReach(averagePct, lowestEmcPct, target)) return { kind: 'too-damp', driestPct };
  const leavesMs = !isShownAbove(averagePct, target.maxPct) ? leavesAtMs(place, target, nowMs) : null;
  if (leavesMs !== null) {
    const entersMs = entersAtMs(place, averagePct, target);
    return { kind: 'leaves', entersOn: entersMs === null ? null : day(entersMs), leavesOn: day(leavesMs) };
  }
  if (likelyMs === null) {
    if (earlyMs === null || isToday(earlyMs))
      return { kind: 'not-within', driestPct: driestPct > target.maxPct ? driestPct : null };
    const { fromMs, toMs } = place.best;
    return { kind: 'unlikely', best: { from: day(fromMs), to: day(toMs) }, driestPct };
  }
  if (isToday(likelyMs)) return { kind: 'any-day' };
  const to = lateMs === null ? null : day(lateMs);
  return { kind: 'likely', when: { likely: day(likelyMs), from: day(earlyMs ?? likelyMs), to } };
}

/** Whether the forecast has the board get there. */
export const isReached = (ready: Ready | undefined): boolean =>
  ready?.kind === 'likely' || ready?.kind === 'any-day';

/** The day on which it is likely ready; null where none is named. */
export const whenOf = (ready: Ready | null): When | null => (ready?.kind === 'likely' ? ready.when : null);
