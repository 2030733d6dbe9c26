/** Local midnight of a day "2026-11-03". */
function startOfDay(day: string): Date {
  const [year = Number.NaN, month = Number.NaN, date = Number.NaN] = day.split('-').map(Number);
  return new Date(year, month - 1, date);
}

/** The local day of an instant: "2026-11-03". */
export function dayOf(instant: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${instant.getFullYear()}-${two(instant.getMonth() + 1)}-${two(instant.getDate())}`;
}

/** The instant of a local day: its noon, and of today now, so that it comes after what was done earlier today. */
export function instantOfDay(day: string, now: Date): string {
  const noon = startOfDay(day);
  noon.setHours(12);
  return (day === dayOf(now) ? now : noon).toISOString();
}
