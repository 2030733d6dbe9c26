import { Choice } from '../../form/Choice.tsx';
import { attempt } from '../../stores/notices.ts';
import { saveSettings, useSettings } from '../../stores/settings.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { KeyList } from './KeyList.tsx';
import { roundKeys } from './round-keys.ts';

const waits = { off: null, '2': 2, '5': 5 } as const;

/** The keys of a round, and whether it goes on to the next board by itself. */
export function KeysDialog({ onClose }: { onClose: () => void }) {
  const { say } = useWords();
  const settings = useSettings((store) => store.settings);
  return (
    <Dialog title={say('round-keys.title')} onClose={onClose}>
      {settings && (
        <Choice
          label={say('round.by-itself')}
          value={String(settings.nextBoardAfterS ?? 'off') as keyof typeof waits}
          options={[
            { value: 'off', label: say('round.by-itself-off') },
            { value: '2', label: say('round.by-itself-after', { seconds: 2 }) },
            { value: '5', label: say('round.by-itself-after', { seconds: 5 }) },
          ]}
          onValue={(wait) => void attempt(saveSettings({ ...settings, nextBoardAfterS: waits[wait] }))}
        />
      )}
      <KeyList keys={roundKeys} />
      <Actions>
        <Button kind="main" onClick={onClose} autoFocus>
          {say('common.close')}
        </Button>
      </Actions>
    </Dialog>
  );
}
