import { Choice } from '../../form/Choice.tsx';
import { attempt } from '../../stores/notices.ts';
import { saveSettings, useSettings } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';

const waits = { off: null, '0': 0, '2': 2, '5': 5 } as const;

/** Whether a round goes on to the next board by itself, and after how long. */
export function NextBoardChoice() {
  const { say } = useWords();
  const settings = useSettings((store) => store.settings);
  return (
    <Choice
      label={say('round.by-itself')}
      value={String(settings.nextBoardAfterS ?? 'off') as keyof typeof waits}
      options={[
        { value: 'off', label: say('round.by-itself-off') },
        { value: '0', label: say('round.by-itself-at-once') },
        { value: '2', label: say('round.by-itself-after', { seconds: 2 }) },
        { value: '5', label: say('round.by-itself-after', { seconds: 5 }) },
      ]}
      onValue={(wait) => void attempt(saveSettings({ ...settings, nextBoardAfterS: waits[wait] }))}
    />
  );
}
