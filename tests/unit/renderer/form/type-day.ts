import { screen, within } from '@testing-library/react';
import type { UserEvent } from '@testing-library/user-event';

const parts = (label: string) =>
  within(screen.getByRole('group', { name: label })).getAllByRole('spinbutton');

/** Types a day into a date field, in the order of the US: "2026-03-10" as 03, 10, 2026. */
export async function typeDay(user: UserEvent, label: string, day: string): Promise<void> {
  const [year = '', month = '', date = ''] = day.split('-');
  await user.click(parts(label)[0]!);
  await user.keyboard(month + date + year);
}

/** Types a local time into a time field, as the US writes it: "2026-03-10T14:05" as 03, 10, 2026, 02, 05, PM. */
export async function typeTime(user: UserEvent, label: string, time: string): Promise<void> {
  const [day = '', clock = ''] = time.split('T');
  await typeDay(user, label, day);
  const [hour = 0, minute = ''] = [Number(clock.slice(0, 2)), clock.slice(3)];
  const hourOf12 = String(hour % 12 || 12).padStart(2, '0');
  await user.keyboard(`${hourOf12}${minute}${hour < 12 ? 'a' : 'p'}`);
}

/** Takes away all that a date or time field shows. */
export async function clearField(user: UserEvent, label: string): Promise<void> {
  for (const part of parts(label)) {
    await user.click(part);
    while (part.getAttribute('aria-valuetext') !== 'Empty') await user.keyboard('{Backspace}');
  }
}

/** What a date or time field shows: "5/4/2026, 8:00 AM". */
export const shownText = (label: string): string =>
  screen
    .getByRole('group', { name: label })
    .textContent.replaceAll(/[\u2066\u2069▾]/g, '')
    .replaceAll(/\s/g, ' ');

/** The day that a date field shows: "2026-03-10"; null where it is blank. */
export function shownDay(label: string): string | null {
  const [month, date, year] = parts(label).map((part) => part.getAttribute('aria-valuenow'));
  return month && date && year ? [year, month.padStart(2, '0'), date.padStart(2, '0')].join('-') : null;
}
