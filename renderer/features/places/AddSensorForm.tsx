import { useEffect, useState } from 'react';
import { z } from 'zod';
import type { NearSensors } from '../../../shared-core/contract/air.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { requests } from '../../../shared-core/contract/requests.ts';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

const { name, kind } = requests['sensors.add'].input.shape;
const schema = z.object({ name, kind });
/** Those of the demo yard, by their ids. */
const simulated: Readonly<Record<string, 'sensors.simulated-air' | 'sensors.simulated-probe'>> = {
  'simulated-hygrometer': 'sensors.simulated-air',
  'simulated-probe': 'sensors.simulated-probe',
};
type Near = NearSensors['sensors'][number];

/** Looks for thermometers in reach, and adds the one that a person chooses. */
export function AddSensorForm({
  place,
  onClose,
}: {
  place: Pick<PlaceRow, 'id' | 'name'>;
  onClose: () => void;
}) {
  const { say } = useWords();
  const near = useQuery('sensors.near', {});
  const known = useQuery('sensors.list', {});
  const [chosenId, setChosenId] = useState<string | null>(null);
  const { draft, field, read, set } = useDraft(schema, { name: '', kind: 'air' });
  useEffect(() => {
    void bridge().command('sensors.search', { isOn: true });
    return () => void bridge().command('sensors.search', { isOn: false });
  }, []);
  const shownName = ({ name, deviceId }: Near): string => {
    const simulatedAs = simulated[deviceId];
    if (simulatedAs) return say(simulatedAs);
    return name || say('sensors.unnamed', { deviceId });
  };

  async function save(): Promise<void> {
    if (chosenId === null) throw new Refusal(message('sensors.choose-first'));
    const sensor = read();
    const placeId = sensor.kind === 'air' ? place.id : null;
    await bridge().command('sensors.add', { ...sensor, deviceId: chosenId, placeId });
    tellDone(say('sensors.added', { name: sensor.name }));
  }

  return (
    <FormDialog
      title={say('sensors.add-at', { placeName: place.name })}
      saveWords={say('sensors.add')}
      onSave={save}
      onClose={onClose}
    >
      <Await of={[near, known]}>
        {({ sensors, busyWith, isSearching, problem }, added) => {
          const fresh = sensors.filter(
            ({ deviceId }) => !added.some((sensor) => sensor.deviceId === deviceId),
          );
          return (
            <>
              {busyWith && <Banner kind="caution">{say(`sensors.busy.${busyWith}`)}</Banner>}
              {problem && <Banner kind="caution">{say(problem)}</Banner>}
              <p aria-live="polite">
                {(fresh.length > 0 || !(busyWith || problem)) &&
                  say(isSearching ? 'sensors.searching' : 'sensors.searched', { sensors: fresh.length })}
              </p>
              <Select
                label={say('sensors.sensor')}
                value={chosenId}
                options={[
                  { value: null, label: say('sensors.choose') },
                  ...fresh.map((sensor) => ({
                    value: sensor.deviceId,
                    label: shownName(sensor),
                    isName: true,
                  })),
                ]}
                onValue={(deviceId) => {
                  setChosenId(deviceId);
                  const sensor = fresh.find((each) => each.deviceId === deviceId);
                  if (sensor && draft.name === '') set({ name: shownName(sensor).slice(0, 80) });
                }}
              />
            </>
          );
        }}
      </Await>
      <Select
        label={say('sensors.what')}
        {...field('kind')}
        value={draft.kind ?? 'air'}
        options={(['air', 'probe'] as const).map((value) => ({
          value,
          label: say(`sensors.what.${value}`),
        }))}
        onValue={(chosen) => set({ kind: chosen })}
      />
      <TextField label={say('sensors.name')} {...field('name')} />
    </FormDialog>
  );
}
