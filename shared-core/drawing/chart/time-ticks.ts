import { DAY_MS, MONTH_DAYS } from '../../time.ts';

const DAY_STEPS = [1, 2, 7, 14];
const MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60, 120];

/** Local midnights that split a time span into at most `most` parts: by days, weeks, months or years. */
export function timeTicks(fromMs: number, toMs: number, most: number): number[] {
  const days = (toMs - fromMs) / DAY_MS;
  const start = new Date(fromMs);
  const [year, month] = [start.getFullYear(), start.getMonth()];
  const dayStep = DAY_STEPS.find((step) => days / step <= most);
  const monthStep = MONTH_STEPS.find((step) => days / MONTH_DAYS / step <= most) ?? MONTH_STEPS.at(-1)!;
  const firstMonth = monthStep >= 12 ? 0 : Math.floor(month / monthStep) * monthStep;
  const tickAt = (step: number) =>
    dayStep === undefined
      ? new Date(year, firstMonth + step * monthStep).getTime()
      : new Date(year, month, start.getDate() + step * dayStep).getTime();
  const ticks: number[] = [];
  for (let step = 0; tickAt(step) <= toMs; step++) ticks.push(tickAt(step));
  return ticks.filter((at) => at >= fromMs);
}
