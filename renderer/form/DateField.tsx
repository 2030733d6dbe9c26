import { parseDate } from '@internationalized/date';
import type { ReactNode } from 'react';
import {
  Button,
  Calendar,
  CalendarCell,
  CalendarGrid,
  DateInput,
  DatePicker,
  DateSegment,
  Dialog,
  FieldError,
  Group,
  Heading,
  I18nProvider,
  Label,
  Popover,
  Text,
} from 'react-aria-components';
import { region } from '../region.ts';
import { useWords } from '../words.ts';
import styles from './date-field.module.css';
import { useHint } from './Field.tsx';

/** A local day, typed in the order of the person's region or chosen from a calendar. */
export function DateField({
  label,
  hint: ownHint,
  error,
  saved,
  value,
  max,
  onValue,
  onBlur,
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
  const { say, formats } = useWords();
  const hint = useHint(ownHint, saved && formats.day(saved));
  const day = value ? parseDate(value) : null;
  /** "26" is 2026. */
  function completeYear(): void {
    if (day && day.year < 100) onValue(day.set({ year: 2000 + day.year }).toString());
  }
  return (
    <I18nProvider locale={region().locale}>
      <DatePicker
        className="field"
        value={day}
        onChange={(chosen) => onValue(chosen?.toString() ?? null)}
        {...(max && { maxValue: parseDate(max) })}
        {...(onBlur && { onBlur })}
        {...(error && { isInvalid: true })}
      >
        <Label>{label}</Label>
        <Group className={`field-box ${styles.group}`}>
          {/* biome-ignore lint/a11y/noStaticElementInteractions: the segments in it have the focus. What they hold is whole once the focus is elsewhere, on the calendar's button too. */}
          <div
            className={styles.typed!}
            onBlur={({ currentTarget, relatedTarget }) => {
              if (!currentTarget.contains(relatedTarget)) completeYear();
            }}
          >
            <DateInput className={styles.input!}>
              {(segment) => <DateSegment segment={segment} className={styles.segment!} />}
            </DateInput>
          </div>
          <Button className={styles.open!} aria-label={say('date-field.calendar')}>
            ▾
          </Button>
        </Group>
        {hint && (
          <Text slot="description" className="soft">
            {hint}
          </Text>
        )}
        <FieldError className="field-error">{error}</FieldError>
        <Popover className="popover">
          <Dialog className={styles.calendar!}>
            <Calendar>
              <header>
                <Button slot="previous">◀</Button>
                <Heading />
                <Button slot="next">▶</Button>
              </header>
              <CalendarGrid>{(day) => <CalendarCell date={day} className={styles.day!} />}</CalendarGrid>
            </Calendar>
          </Dialog>
        </Popover>
      </DatePicker>
    </I18nProvider>
  );
}
