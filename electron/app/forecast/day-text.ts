const dayFormat = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/** The local day of an instant as a person writes it: "3 Nov 2026". */
export function dayText(instant: string | number): string {
  return dayFormat.format(new Date(instant));
}
