import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { ClockField } from '../../form/ClockField.tsx';
import { DateField } from '../../form/DateField.tsx';
import type { Fields } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
import { PlaceField } from '../places/PlaceField.tsx';
import { IfMoved } from './IfMoved.tsx';

/** Where wood was moved to, and when. */
export function MoveFields({
  move: { draft, field, set },
  butNot,
  boards,
}: {
  move: Fields<{ placeId: number; since: string; time: string }>;
  /** Where all of it is. */
  butNot?: number | undefined;
  /** Those to be moved. */
  boards: RequestInput<'stacks.ifMoved'>;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  return (
    <>
      <p className="soft">{say('stacks.move-history')}</p>
      <PlaceField label={say('stacks.move-to')} butNot={butNot} {...field('placeId')} />
      {draft.since === today && <IfMoved boards={boards} butNot={butNot} placeId={draft.placeId} />}
      <DateField
        label={say('stacks.move-day')}
        max={today}
        {...field('since')}
        value={draft.since || null}
        onValue={(day) => set({ since: day ?? '' })}
      />
      <ClockField label={say('life.move-time')} value={draft.time} onValue={(time) => set({ time })} />
    </>
  );
}
