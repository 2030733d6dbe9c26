import { useState } from 'react';
import type { OfferedCharacteristic } from '../../../shared-core/contract/meter.ts';
import type { Start } from '../../../shared-core/gatt/meter-description.ts';
import { bytesHexSchema } from '../../../shared-core/gatt/source.ts';
import { Checkbox, Select, TextField } from '../../form/Field.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';

/** What to write to a meter that sends nothing by itself. */
export function StartCommand({
  places,
  onStart,
}: {
  /** Those that can be written to. */
  places: readonly OfferedCharacteristic[];
  onStart: (start: Start) => void;
}) {
  const { say } = useWords();
  const [at, setAt] = useState(0);
  const [bytes, setBytes] = useState('');
  const [withResponse, setWithResponse] = useState(true);
  const [isWrong, setWrong] = useState(false);

  function send(): void {
    const made = bytesHexSchema.min(2).safeParse(bytes.replace(/[\s:-]/g, '').toLowerCase());
    setWrong(!made.success);
    if (!made.success) return;
    const { serviceUuid, characteristicUuid } = places[at]!;
    onStart({ serviceUuid, characteristicUuid, bytesHex: made.data, withResponse });
  }

  return (
    <Unfold words={say('watch.start')}>
      <form
        className="column"
        aria-label={say('watch.start')}
        onSubmit={(event) => {
          event.preventDefault();
          send();
        }}
      >
        <p>{say('watch.start-how')}</p>
        <div className="form-grid">
          <Select
            label={say('watch.start-at')}
            value={at}
            options={places.map(({ userDescription, characteristicUuid }, index) => ({
              value: index,
              label: [userDescription, characteristicUuid].filter(Boolean).join(' · '),
              isName: true,
            }))}
            onValue={setAt}
          />
          <TextField
            label={say('watch.start-bytes')}
            hint={say('watch.start-hint')}
            error={isWrong ? say('watch.start-wrong') : null}
            value={bytes}
            onValue={setBytes}
            spellCheck={false}
          />
        </div>
        <Checkbox label={say('watch.start-confirmed')} checked={withResponse} onChecked={setWithResponse} />
        <Actions>
          <Button type="submit">{say('watch.start-send')}</Button>
        </Actions>
      </form>
    </Unfold>
  );
}
