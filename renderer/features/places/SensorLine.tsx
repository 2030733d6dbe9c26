import { useState } from 'react';
import type { Sensor } from '../../../shared-core/contract/air.ts';
import { bridge } from '../../data/bridge.ts';
import { useSaving } from '../../form/useSaving.ts';
import { tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Menu } from '../../ui/Menu.tsx';
import { useWords } from '../../words.ts';
import { ConfirmDialog } from '../closing/ConfirmDialog.tsx';
import { MoveSensorForm } from './MoveSensorForm.tsx';
import css from './places.module.css';
import { RenameSensorForm } from './RenameSensorForm.tsx';

/** A sensor by its name, and what can be done with it. */
export function SensorLine({ sensor }: { sensor: Sensor }) {
  const { say } = useWords();
  const [doing, setDoing] = useState<'move' | 'rename' | 'remove' | null>(null);
  const { id, version: basedOn, name, kind } = sensor;
  const onClose = () => setDoing(null);
  const reading = useSaving(() => undefined);
  const read = () =>
    reading.save(async () => {
      const { tempC, rh } = await bridge().command('sensors.read', { id });
      if (tempC !== null && rh !== null)
        tellDone(say('sensors.read-air', { name, airTempC: tempC, humidityRhPct: 100 * rh }));
      else if (tempC !== null) tellDone(say('sensors.read-temp', { name, woodTempC: tempC }));
    });
  return (
    <li className={css.sensor}>
      <span>
        <span translate="no">{name}</span> <span className="soft">{say(`sensors.kind.${kind}`)}</span>
        <span aria-live="polite">{reading.busy && ` ${say('sensors.reading', { name })}`}</span>
      </span>
      <Menu
        title={say('life.more')}
        label={say('closing.more-of', { name })}
        items={[
          { id: 'read', title: say('sensors.read'), onPress: () => void read() },
          ...(['move', 'rename', 'remove'] as const)
            .filter((item) => item !== 'move' || kind === 'air')
            .map((item) => ({ id: item, title: say(`sensors.${item}`), onPress: () => setDoing(item) })),
        ]}
      />
      {reading.problem && <Banner kind="problem">{reading.problem.sentence}</Banner>}
      {doing === 'move' && <MoveSensorForm sensor={sensor} onClose={onClose} />}
      {doing === 'rename' && <RenameSensorForm sensor={sensor} onClose={onClose} />}
      {doing === 'remove' && (
        <ConfirmDialog
          title={say('sensors.remove-named', { name })}
          effect={say('sensors.remove-effect')}
          doWords={say('sensors.remove')}
          doneWords={say('sensors.removed', { name })}
          onDo={() => bridge().command('sensors.remove', { id, basedOn })}
          onClose={onClose}
        />
      )}
    </li>
  );
}
