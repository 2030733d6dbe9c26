import { CalendarDateTime } from '@internationalized/date';
import { z } from 'zod';
import { says } from '../../shared-core/contract/validation.ts';
import { instantSchema } from '../../shared-core/time.ts';
import { useWords } from '../words.ts';
import { CalendarField } from './CalendarField.tsx';

/** What the field gives. A time of which only a part was typed is none, and never now. */
export const givenTimeSchema = z.string().min(1, says('validation.time-missing')).pipe(instantSchema);

/** The local time that the field shows, to the minute. */
const localTime = (instant: Date): CalendarDateTime =>
  new CalendarDateTime(
    instant.getFullYear(),
    instant.getMonth() + 1,
    instant.getDate(),
    instant.getHours(),
    instant.getMinutes(),
  );

/** When something was done: now, unless another time is given. */
export function TimeField({
  label,
  blankIsNow = true,
  error,
  saved,
  value,
  onValue,
  onBlur,
}: {
  label: string;
  blankIsNow?: boolean;
  error?: string | null;
  saved?: string | null | undefined;
  /** UTC, ISO 8601; null for a blank field, an empty text for a part of a time. */
  value: string | null;
  onValue: (instant: string | null) => void;
  onBlur?: () => void;
}) {
  const { say, formats } = useWords();
  const now = localTime(new Date());
  return (
    <CalendarField
      label={label}
      hint={blankIsNow ? say('time-field.hint') : undefined}
      error={error}
      saved={saved && formats.dateTime(saved)}
      value={value ? localTime(new Date(value)) : null}
      max={now}
      usual={now}
      // Read as local time, by the rules of the browser's time zone.
      onValue={(time) => onValue(time && new Date(time.toString()).toISOString())}
      onLeft={(isPartial) => {
        if (isPartial) onValue('');
        else if (value === '') onValue(null);
      }}
      onBlur={onBlur}
    />
  );
}
