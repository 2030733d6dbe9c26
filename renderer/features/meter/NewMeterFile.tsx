import { Refusal } from '../../../shared-core/contract/answer.ts';
import { descriptionIn } from '../../../shared-core/contract/meter-file.ts';
import { knownHere } from '../../../shared-core/probing/readings/meter-profile.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { FileButton } from '../../form/FileButton.tsx';
import { showMeter } from '../../stores/meter.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { fileUsed, openMeterFile } from './meter-file.ts';

/** Sets up the connected meter by a file, as of one like it. */
export function NewMeterFile() {
  const { say } = useWords();
  async function use(picked: File): Promise<void> {
    const file = await openMeterFile(picked);
    const description = descriptionIn(file);
    const { name: fileName } = picked;
    if (description === null) {
      const problem = message('meter-file.of-hand-meter');
      throw new Refusal(message('meter-file.refused', { fileName, problem }));
    }
    const state = await bridge().command('meter.describe', description);
    showMeter(state);
    // Where the meter does not send what is described, its state says so.
    const { meterId } = state;
    if (meterId === null) return;
    const meter = (await bridge().query('meters.list', {})).find(({ id }) => id === meterId);
    const all = await bridge().query('species.list', {});
    const profile = file.profile && knownHere(file.profile, (id) => all.some((each) => each.id === id));
    // An edit: undone, it takes back what the values mean, and the meter is read by the file as before.
    if (profile && meter) {
      const { version: basedOn } = meter;
      await bridge().command('meters.edit', { id: meterId, basedOn, changed: { profile } });
    }
    tellDone(say(fileUsed(file, profile), { meterName: state.deviceName ?? say('meter.nameless') }));
  }
  return (
    <FileButton label={say('meter-file.use')} accept=".json" onFiles={([file]) => void attempt(use(file))} />
  );
}
