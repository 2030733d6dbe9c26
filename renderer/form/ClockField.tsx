import { parseTime } from '@internationalized/date';
import type { ReactNode } from 'react';
import { DateInput, DateSegment, I18nProvider, Label, TimeField } from 'react-aria-components';
import { writtenIn } from '../../shared-core/words/written-in.ts';
import { region } from '../region.ts';
import styles from './date-field.module.css';

/** A time of day, typed as the person's region writes it. */
export function ClockField({
  label,
  value,
  onValue,
}: {
  label: ReactNode;
  /** "14:05"; blank for none. */
  value: string;
  onValue: (time: string) => void;
}) {
  return (
    <I18nProvider locale={writtenIn(region().locale)}>
      <TimeField
        className="field"
        value={value === '' ? null : parseTime(value)}
        onChange={(time) => onValue(time?.toString().slice(0, 5) ?? '')}
      >
        <Label>{label}</Label>
        <DateInput className={`field-box ${styles.group} ${styles.input}`}>
          {(segment) => <DateSegment segment={segment} className={styles.segment!} />}
        </DateInput>
      </TimeField>
    </I18nProvider>
  );
}
