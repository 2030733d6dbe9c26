import { DateField } from '../../form/DateField.tsx';
import type { Fields } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
import { PlaceField } from '../places/PlaceField.tsx';

/** Where wood was moved to, and on which day. */
export function MoveFields({
  move: { draft, field, set },
  butNot,
}: {
  move: Fields<{ placeId: number; since: string }>;
  /** Where all of it is. */
  butNot?: number | undefined;
}) {
  const { say, formats } = useWords();
  return (
    <>
      <p className="soft">{say('stacks.move-history')}</p>
      <PlaceField label={say('stacks.move-to')} butNot={butNot} {...field('placeId')} />
      <DateField
        label={say('stacks.move-day')}
        hint={say('stacks.move-day-hint')}
        max={formats.localDay(new Date())}
        {...field('since')}
        value={draft.since || null}
        onValue={(day) => set({ since: day ?? '' })}
      />
    </>
  );
}
