import { getLocalTimeZone, parseDate, today } from '@internationalized/date';
import type { ReactNode } from 'react';
import { useWords } from '../words.ts';
import { CalendarField } from './CalendarField.tsx';

/** A local day. */
export function DateField({
  saved,
  value,
  max,
  onValue,
  ...rest
}: {
  label: ReactNode;
  hint?: ReactNode;
  error?: string | null;
  saved?: string | null | undefined;
  /** "2026-11-03"; null for none. */
  value: string | null;
  /** The last day that may be chosen. */
  max?: string;
  onValue: (day: string | null) => void;
  onBlur?: () => void;
}) {
  const { formats } = useWords();
  return (
    <CalendarField
      {...rest}
      saved={saved && formats.day(saved)}
      value={value ? parseDate(value) : null}
      max={max ? parseDate(max) : undefined}
      usual={today(getLocalTimeZone())}
      onValue={(day) => onValue(day?.toString() ?? null)}
    />
  );
}
