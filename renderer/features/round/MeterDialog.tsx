import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { attempt } from '../../stores/notices.ts';
import { typeFrom, useTypingMeter } from '../../stores/typing-meter.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { ProfileFacts } from '../meter/ProfileFacts.tsx';
import { ProfileForm } from '../meter/ProfileForm.tsx';
import type { Probing } from './useProbing.ts';

/** Which meter the values typed from now on are read off. */
export function MeterDialog({ onClose }: Probing) {
  const { say } = useWords();
  const { output } = useQuery('meters.list', {});
  const [isAdding, setAdding] = useState(false);
  const meters = output ?? [];
  const used = useTypingMeter();
  if (isAdding) return <ProfileForm meter={null} isForRound onClose={onClose} />;
  return (
    <Dialog title={say('round-meter.title')} onClose={onClose}>
      <Choice
        label={say('round-meter.from-now-on')}
        value={String(used?.id)}
        options={meters.map(({ id, name }) => ({ value: String(id), label: name, isName: true }))}
        onValue={(id) => void attempt(typeFrom(Number(id)))}
      />
      {used && <ProfileFacts meter={used} />}
      <Actions>
        <Button kind="main" onClick={onClose}>
          {say('common.close')}
        </Button>
        <Button onClick={() => setAdding(true)}>{say('meters.add')}</Button>
      </Actions>
    </Dialog>
  );
}
