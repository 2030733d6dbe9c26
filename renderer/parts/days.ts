const dayFormat = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const timeFormat = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const DAY_MS = 86_400_000;

/** Local midnight of a day "2026-11-03". */
function startOfDay(day: string): Date {
  const [year = Number.NaN, month = Number.NaN, date = Number.NaN] = day.split('-').map(Number);
  return new Date(year, month - 1, date);
}

/** "3 Nov 2026", from a UTC instant or a local day. */
export function dayWords(instantOrDay: string): string {
  return dayFormat.format(instantOrDay.includes('T') ? new Date(instantOrDay) : startOfDay(instantOrDay));
}

/** "3 Nov 2026, 14:05" in local time. */
export function dayTimeWords(instant: string): string {
  return `${dayWords(instant)}, ${timeFormat.format(new Date(instant))}`;
}

/** The local day of an instant: "2026-11-03". */
export function dayOf(instant: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${instant.getFullYear()}-${two(instant.getMonth() + 1)}-${two(instant.getDate())}`;
}

/** How long ago in local days: "today", "yesterday", "12 days ago", "4 months ago". */
export function agoWords(instant: string, now: Date): string {
  const days = Math.round(
    (startOfDay(dayOf(now)).getTime() - startOfDay(dayOf(new Date(instant))).getTime()) / DAY_MS,
  );
  if (days <= 0) return 'today';
  if (days === 1) return 'yesterday';
  if (days < 60) return `${days} days ago`;
  const months = Math.round(days / 30.44);
  return months < 24 ? `${months} months ago` : `${Math.round(days / 365.25)} years ago`;
}

/** The instant of a local day: its noon, or now where that is still to come. */
export function instantOfDay(day: string, now: Date): string {
  const noon = startOfDay(day);
  noon.setHours(12);
  const isToday = day === dayOf(now);
  return (isToday && noon > now ? now : noon).toISOString();
}
