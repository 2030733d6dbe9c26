import { DAY_MS, MONTH_DAYS } from '../../shared-core/time.ts';

const DAY_STEPS = [1, 2, 7, 14];
const MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60, 120];

/** Local midnights that split a time span into at most `most` parts: by days, weeks, months or years. */
export function timeTicks(fromMs: number, toMs: number, most: number): number[] {
  const days = (toMs - fromMs) / DAY_MS;
  const dayStep = DAY_STEPS.find((step) => days / step <= most);
  const start = new Date(fromMs);
  const ticks: number[] = [];
  const keep = (date: Date) => {
    if (date.getTime() >= fromMs && date.getTime() <= toMs) ticks.push(date.getTime());
    return date.getTime() <= toMs;
  };
  if (dayStep !== undefined) {
    for (let day = 0; ; day += dayStep) {
      if (!keep(new Date(start.getFullYear(), start.getMonth(), start.getDate() + day))) return ticks;
    }
  }
  const monthStep = MONTH_STEPS.find((step) => days / MONTH_DAYS / step <= most) ?? MONTH_STEPS.at(-1)!;
  const firstMonth = monthStep >= 12 ? 0 : Math.floor(start.getMonth() / monthStep) * monthStep;
  for (let month = firstMonth; ; month += monthStep) {
    if (!keep(new Date(start.getFullYear(), month, 1))) return ticks;
  }
}
