import { dayOf } from '../ui/days.ts';
import { useWords } from '../words.ts';
import { Field } from './Field.tsx';

/** The local time that the field shows: "2026-11-03T14:05". */
function localTime(instant: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${dayOf(instant)}T${two(instant.getHours())}:${two(instant.getMinutes())}`;
}

/** When something was done: now, unless another time is given. */
export function TimeField({
  label,
  blankIsNow = true,
  error,
  saved,
  instant,
  onInstant,
  onBlur,
}: {
  label: string;
  blankIsNow?: boolean;
  error?: string | null;
  saved?: string | null | undefined;
  /** UTC, ISO 8601; null for now. */
  instant: string | null;
  onInstant: (instant: string | null) => void;
  onBlur?: () => void;
}) {
  const { say, formats } = useWords();
  return (
    <Field
      label={label}
      hint={blankIsNow ? say('time-field.hint') : undefined}
      error={error ?? null}
      saved={saved && formats.dateTime(saved)}
    >
      {(wiring) => (
        <input
          {...wiring}
          type="datetime-local"
          onBlur={onBlur}
          value={instant === null ? '' : localTime(new Date(instant))}
          max={localTime(new Date())}
          onChange={(event) => {
            const typed = new Date(event.target.value);
            onInstant(Number.isNaN(typed.getTime()) ? null : typed.toISOString());
          }}
        />
      )}
    </Field>
  );
}
