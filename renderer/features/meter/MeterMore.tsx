import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { bridge } from '../../data/bridge.ts';
import { useFilePicker } from '../../form/FileButton.tsx';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Menu } from '../../ui/Menu.tsx';
import { useWords } from '../../words.ts';
import { openMeterFile, saveMeterFile } from './meter-file.ts';

/** What else can be done with a meter of the yard: its file, to share how it is read and what its values mean. */
export function MeterMore({ meter: { id: meterId, name: meterName } }: { meter: MeterOfYard }) {
  const { say } = useWords();
  const { open, picker } = useFilePicker({
    label: say('meter-file.use-for', { meterName }),
    accept: '.json',
    onFiles: ([file]) => void attempt(use(file)),
  });

  async function use(picked: File): Promise<void> {
    const file = await openMeterFile(picked);
    await bridge().command('meters.useFile', { meterId, file });
    tellDone(say('meter-file.used', { meterName }));
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
        ]}
      />
      {picker}
    </>
  );
}
