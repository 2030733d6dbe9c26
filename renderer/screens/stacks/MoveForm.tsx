import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../bridge.ts';
import { dayOf, instantOfDay } from '../../parts/days.ts';
import { Select, TextField } from '../../parts/Field.tsx';
import { FormDialog } from '../../parts/FormDialog.tsx';
import { Failed, Loading } from '../../parts/Screen.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useAnswer } from '../../useAnswer.ts';

/** Asks where boards, or a stack with all its boards, were moved to, and when. */
export function MoveForm({
  what,
  target,
  onClose,
}: {
  /** As it stands in the title: "3 boards". */
  what: string;
  target: { boardIds: number[] } | { stackId: number };
  onClose: () => void;
}) {
  const places = useAnswer('places.list', {});
  const [placeId, setPlaceId] = useState('');
  const [day, setDay] = useState(dayOf(new Date()));

  async function save(): Promise<void> {
    const place = places.output?.find((each) => String(each.id) === placeId);
    if (!place) throw new Refusal(message('validation.place-missing'));
    if (day === '') throw new Refusal(message('validation.day-missing'));
    const to = { placeId: place.id, since: instantOfDay(day, new Date()) };
    if ('boardIds' in target) await bridge().command('boards.move', { boardIds: target.boardIds, ...to });
    else await bridge().command('stacks.move', { id: target.stackId, ...to });
    tellDone(`Moved ${what} to ${place.name}.`);
  }

  return (
    <FormDialog title={`Move ${what}`} saveWords="Move" onSave={save} onClose={onClose}>
      {places.error && <Failed sentence={places.error} again={places.again} />}
      {places.loading && <Loading />}
      <p>Where a board stood before stays in its history: it decides how it dried.</p>
      <Select
        label="To"
        value={placeId}
        options={[
          { value: '', label: 'Choose a place' },
          ...(places.output ?? []).map((place) => ({ value: String(place.id), label: place.name })),
        ]}
        onValue={setPlaceId}
      />
      <TextField
        label="On"
        type="date"
        max={dayOf(new Date())}
        hint="The day on which they were moved."
        value={day}
        onValue={setDay}
      />
    </FormDialog>
  );
}
