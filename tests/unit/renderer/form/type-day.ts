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

/** The day that a date field shows: "2026-03-10"; null where it is blank. */
export function shownDay(label: string): string | null {
  const [month, date, year] = parts(label).map((part) => part.getAttribute('aria-valuenow'));
  return month && date && year ? [year, month.padStart(2, '0'), date.padStart(2, '0')].join('-') : null;
}
