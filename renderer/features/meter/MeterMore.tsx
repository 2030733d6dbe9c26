import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { bridge } from '../../data/bridge.ts';
import { useFilePicker } from '../../form/FileButton.tsx';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Menu } from '../../ui/Menu.tsx';
import { useWords } from '../../words.ts';
import { fileUsed, openMeterFile, saveMeterFile } from './meter-file.ts';

/** What else can be done with a meter: its file, to share how it is read and what its values mean; and to remove it. */
export function MeterMore({ meter: { id: meterId, name: meterName } }: { meter: MeterOfYard }) {
  const { say } = useWords();
  const { open, picker } = useFilePicker({
    label: say('meter-file.use-for', { meterName }),
    accept: '.json',
    onFiles: ([file]) => void attempt(use(file)),
  });

  async function use(picked: File): Promise<void> {
    const file = await openMeterFile(picked);
    const { profile } = await bridge().command('meters.useFile', { meterId, file });
    tellDone(say(fileUsed(file, profile), { meterName }));
  }
  async function remove(): Promise<void> {
    if (await attempt(bridge().command('meters.close', { meterId })))
      tellDone(say('meters.removed', { meterName }));
  }
  const save = () => void attempt(saveMeterFile(meterId, say('meter-file.name', { meterName })));

  return (
    <>
      <Menu
        title={say('life.more')}
        label={say('closing.more-of', { name: meterName })}
        kind="quiet"
        items={[
          { id: 'save', title: say('meter-file.save'), onPress: save },
          { id: 'use', title: say('meter-file.use'), onPress: open },
          { id: 'remove', title: say('meters.remove'), onPress: () => void remove() },
        ]}
      />
      {picker}
    </>
  );
}
