import type { CalendarDate, CalendarDateTime } from '@internationalized/date';
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
  Group,
  Heading,
  I18nProvider,
  Label,
  Popover,
} from 'react-aria-components';
import { writtenIn } from '../../shared-core/words/written-in.ts';
import { region } from '../region.ts';
import { useWords } from '../words.ts';
import { BelowField } from './BelowField.tsx';
import styles from './date-field.module.css';
import { useHint } from './Field.tsx';

/** A day, or a time of one, typed in the order of the person's region or chosen from a calendar. */
export function CalendarField<T extends CalendarDate | CalendarDateTime>({
  label,
  hint: ownHint,
  error,
  saved,
  value,
  max,
  usual,
  onValue,
  onLeft,
  onBlur,
}: {
  label: ReactNode;
  hint?: ReactNode;
  error?: string | null | undefined;
  /** What another window saved in it meanwhile, as it is shown. */
  saved: string | null | undefined;
  value: T | null;
  /** The last that may be chosen. */
  max?: T | undefined;
  /** Tells a day from a time; its time of day goes with a day that is chosen from the calendar. */
  usual: T;
  onValue: (chosen: T | null) => void;
  /** @param isPartial  some parts were typed and some are blank */
  onLeft?: (isPartial: boolean) => void;
  onBlur?: (() => void) | undefined;
}) {
  const { say } = useWords();
  const hint = useHint(ownHint, saved);
  function leave(group: HTMLElement): void {
    // "26" is 2026.
    if (value && value.year < 100) onValue(value.set({ year: 2000 + value.year }) as T);
    const blank = group.querySelectorAll('[data-placeholder]').length;
    onLeft?.(blank > 0 && blank < group.querySelectorAll('[role=spinbutton]').length);
  }
  return (
    <I18nProvider locale={writtenIn(region().locale)}>
      <DatePicker
        className="field"
        value={value}
        granularity={'hour' in usual ? 'minute' : 'day'}
        placeholderValue={usual}
        onChange={(chosen) => onValue(chosen as T | null)}
        {...(max && { maxValue: max })}
        {...(onBlur && { onBlur })}
        {...(error && { isInvalid: true })}
      >
        <Label>{label}</Label>
        <Group className={`field-box ${styles.group}`}>
          {/* biome-ignore lint/a11y/noStaticElementInteractions: the segments in it have the focus. What they hold is whole once the focus is elsewhere, on the calendar's button too. */}
          <div
            className={styles.typed!}
            onBlur={({ currentTarget, relatedTarget }) => {
              if (!currentTarget.contains(relatedTarget)) leave(currentTarget);
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
        <BelowField hint={hint} problem={error} />
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
