import { useState } from 'react';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { Actions, Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { TextField } from '../../parts/Field.tsx';
import { McValue } from '../../parts/McValue.tsx';
import { exclude } from '../../stores/round.ts';

const reasons = [
  'Pins were not in far enough',
  'Knot, pitch or bark',
  'Wet face',
  'Wrong board or spot',
  'Slip of typing',
] as const;

/** Asks why a reading should not count. It stays on record, and can be put back. */
export function ExcludeDialog({
  reading,
  onExclude = (why) => void exclude(reading.id, why),
  onClose,
}: {
  reading: JudgedReading;
  /** Within the open round unless said otherwise. */
  onExclude?: (why: string) => void;
  onClose: () => void;
}) {
  const [why, setWhy] = useState('');
  function finish(reason: string): void {
    onClose();
    onExclude(reason);
  }
  return (
    <Dialog title="Set this reading aside?" onClose={onClose}>
      <McValue mcPct={reading.corrected.mcPct} raw={reading.raw} unit={reading.unit} />
      <p>It stays on record and is left out of the averages. Why?</p>
      <Actions>
        {reasons.map((reason) => (
          <Button key={reason} onClick={() => finish(reason)}>
            {reason}
          </Button>
        ))}
      </Actions>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (why.trim() !== '') finish(why.trim());
        }}
      >
        <TextField label="Another reason" maxLength={200} value={why} onValue={setWhy} />
        <Actions>
          <Button type="submit" kind="main" disabled={why.trim() === ''}>
            Set aside
          </Button>
          <Button onClick={onClose}>Leave it in</Button>
        </Actions>
      </form>
    </Dialog>
  );
}
