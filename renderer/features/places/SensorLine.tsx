import { useState } from 'react';
import type { Sensor } from '../../../shared-core/contract/air.ts';
import { bridge } from '../../data/bridge.ts';
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
  return (
    <li className={css.sensor}>
      <span>
        <span translate="no">{name}</span> <span className="soft">{say(`sensors.kind.${kind}`)}</span>
      </span>
      <Menu
        title={say('life.more')}
        label={say('closing.more-of', { name })}
        items={(['move', 'rename', 'remove'] as const)
          .filter((item) => item !== 'move' || kind === 'air')
          .map((item) => ({ id: item, title: say(`sensors.${item}`), onPress: () => setDoing(item) }))}
      />
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
