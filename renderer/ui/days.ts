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

/** The local time of an instant: "14:05". */
export function timeOf(instant: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(instant.getHours())}:${two(instant.getMinutes())}`;
}

/**
 * The instant of a local day and a time of it, and whether it stands for the whole day.
 * @param time  "14:05"; blank where it is not known: of today, now
 */
export function momentOfDay(day: string, time: string, now: Date): { since: string; isDayOnly: boolean } {
  if (time === '') return { since: instantOfDay(day, now), isDayOnly: day !== dayOf(now) };
  const [hours = Number.NaN, minutes = Number.NaN] = time.split(':').map(Number);
  const at = startOfDay(day);
  at.setHours(hours, minutes);
  return { since: at.toISOString(), isDayOnly: false };
}
