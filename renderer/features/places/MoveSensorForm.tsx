import { useState } from 'react';
import type { Sensor } from '../../../shared-core/contract/air.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { Select } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';

/** Asks where a sensor is, and since when. */
export function MoveSensorForm({
  sensor: { id, name, placeId },
  onClose,
}: {
  sensor: Sensor;
  onClose: () => void;
}) {
  const { say } = useWords();
  const places = useQuery('places.list', {});
  const today = dayOf(new Date());
  const [to, setTo] = useState(placeId);
  const [sinceOn, setSinceOn] = useState<string | null>(today);
  return (
    <Await of={[places]}>
      {(all) => (
        <FormDialog
          title={say('sensors.move-named', { name })}
          saveWords={say('sensors.move')}
          onSave={async () => {
            if (sinceOn === null) throw new Refusal(message('validation.day-missing'));
            await bridge().command('sensors.move', { id, placeId: to, sinceOn });
            tellDone(say('sensors.moved', { name }));
          }}
          onClose={onClose}
        >
          <p>{say('sensors.move-effect')}</p>
          <Select
            label={say('sensors.place')}
            value={to}
            options={[
              ...all.map(({ id: value, name: label }) => ({ value, label, isName: true })),
              { value: null, label: say('sensors.no-place') },
            ]}
            onValue={setTo}
          />
          <DateField label={say('sensors.since')} max={today} value={sinceOn} onValue={setSinceOn} />
        </FormDialog>
      )}
    </Await>
  );
}
