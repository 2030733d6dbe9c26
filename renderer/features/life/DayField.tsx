import { DateField } from '../../form/DateField.tsx';
import type { Fields } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

/** On which day boards left or were cut: today, or before. */
export function DayField({
  today,
  fields: { draft, field, set },
}: {
  today: string;
  fields: Fields<{ on: string }>;
}) {
  const { say } = useWords();
  return (
    <DateField
      label={say('life.day')}
      max={today}
      {...field('on')}
      value={draft.on || null}
      onValue={(day) => set({ on: day ?? '' })}
    />
  );
}
