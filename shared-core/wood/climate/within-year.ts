/** Middle of a month, UTC; months are counted from January 1970. */
export const midMonthMs = (month: number): number =>
  (Date.UTC(1970, month, 1) + Date.UTC(1970, month + 1, 1)) / 2;

/** The month whose middle is the last one at or before the instant. */
export function monthBefore(atMs: number): number {
  const date = new Date(atMs);
  const month = (date.getUTCFullYear() - 1970) * 12 + date.getUTCMonth();
  return midMonthMs(month) <= atMs ? month : month - 1;
}

/** 0 for January. */
export const inYear = (month: number): number => ((month % 12) + 12) % 12;

/** A value of each month, January first, at an instant: straight from the middle of one month to that of the next. */
export function withinYear(ofMonths: readonly number[], atMs: number): number {
  const month = monthBefore(atMs);
  const [left, right] = [midMonthMs(month), midMonthMs(month + 1)];
  const [a, b] = [ofMonths[inYear(month)] as number, ofMonths[inYear(month + 1)] as number];
  return a + ((b - a) * (atMs - left)) / (right - left);
}
