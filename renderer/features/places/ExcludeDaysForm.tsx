import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { DateField } from '../../form/DateField.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { DayRuns } from './DayRuns.tsx';

/** Asks from which day to which what sensors logged at a place is not used, or is used again. */
export function ExcludeDaysForm({
  place: { id: placeId, name: placeName },
  what,
  day,
  onClose,
}: {
  place: Pick<PlaceRow, 'id' | 'name'>;
  what: 'exclude' | 'include';
  /** The day that the form begins with. */
  day: string;
  onClose: () => void;
}) {
  const { say } = useWords();
  const [fromOn, setFrom] = useState<string | null>(day);
  const [toOn, setTo] = useState<string | null>(day);
  return (
    <FormDialog
      title={say(`places.${what}-days`, { placeName })}
      saveWords={say(`places.${what}`)}
      onSave={async () => {
        if (fromOn === null || toOn === null) throw new Refusal(message('validation.day-missing'));
        const { days } = await bridge().command(`air.${what}`, { placeId, fromOn, toOn });
        tellDone(say(`places.${what}d`, { days, placeName }));
      }}
      onClose={onClose}
    >
      <p>{say(`places.${what}-effect`)}</p>
      <DayRuns dayMs={Date.parse(`${day}T00:00Z`)} />
      <DateField label={say('places.first-day')} value={fromOn} onValue={setFrom} />
      <DateField label={say('places.last-day')} value={toOn} onValue={setTo} />
    </FormDialog>
  );
}
