import { DAY_MS } from '../../time.ts';
import type { Words } from '../../words/words.ts';
import type { Tick, XAxis, YAxis } from './description.ts';
import { niceTicks } from './scale.ts';
import { timeTicks } from './time-ticks.ts';

/** What took less time than this is drawn over as much. */
const SHORTEST_DAYS = 4;
/** The room on either side of the first and the last instant, as a share of the time between them. */
const BESIDE = 0.04;

/** Days between two instants, UTC ms, with room beside them. The year is under the first tick of each. */
export function timeAxis(fromMs: number, toMs: number, { say, formats }: Words): XAxis {
  const spanMs = Math.max(toMs - fromMs, SHORTEST_DAYS * DAY_MS);
  const [from, to] = [fromMs - BESIDE * spanMs, fromMs + (1 + BESIDE) * spanMs];
  return {
    title: say('chart.day'),
    from,
    to,
    text: (atMs) => formats.day(new Date(atMs).toISOString()),
    ticks: (most) => {
      let before: number | null = null;
      return timeTicks(from, to, most).map((at, _, all): Tick => {
        const date = new Date(at);
        const isByMonth = all.every((each) => new Date(each).getDate() === 1) && all.length > 1;
        const year = date.getFullYear() === before ? undefined : formats.raw(date.getFullYear());
        before = date.getFullYear();
        return {
          at,
          label: isByMonth
            ? formats.month(date.getMonth() + 1, 'short')
            : formats.dayOfYear(date.toISOString()),
          year,
        };
      });
    },
  };
}

/** Numbers from one to another, with round ones as ticks. */
export const numberAxis = (
  title: string,
  from: number,
  to: number,
  text: (value: number) => string,
  tickText = text,
): XAxis => ({
  title,
  from,
  to,
  text,
  ticks: (most) =>
    niceTicks(from, to, most)
      .filter((at) => at >= from && at <= to)
      .map((at) => ({ at, label: tickText(at) })),
});

/** Moisture contents, % MC. */
export const mcAxis = (title: string, { formats }: Words, more: Partial<YAxis> = {}): YAxis => ({
  title,
  text: formats.mc,
  intervalText: (minPct, maxPct) => formats.mcInterval({ minPct, maxPct }),
  tickText: formats.percent,
  startsAtZero: true,
  ...more,
});
