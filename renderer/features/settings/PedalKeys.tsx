import { type KeyboardEvent, useRef, useState } from 'react';
import {
  canBePedal,
  type PedalAction,
  pedalActionOf,
  pedalActions,
  withPedalKey,
} from '../../../shared-core/hands-free/pedal-keys.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { attempt } from '../../stores/notices.ts';
import { saveSettings, useSettings } from '../../stores/settings.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { usualWords } from '../round/round-keys.ts';
import css from './hands-free.module.css';
import { keyName } from './key-name.ts';

/** Which key of a pedal or a presenter does what: it is pressed once, and learned. */
export function PedalKeys() {
  const { say } = useWords();
  const settings = useSettings((store) => store.settings);
  const { pedalKeys } = settings;
  const [learning, setLearning] = useState<PedalAction | null>(null);
  const [told, setTold] = useState<Message | null>(null);
  const clearing = useRef<HTMLFieldSetElement>(null);

  const save = (action: PedalAction, key: string | null) =>
    void attempt(saveSettings({ ...settings, pedalKeys: withPedalKey(pedalKeys, action, key) }));

  function learn(event: KeyboardEvent, action: PedalAction): void {
    const { key } = event;
    if (learning !== action || key === 'Tab') return;
    event.preventDefault();
    event.stopPropagation();
    if (event.repeat) return;
    if (key === 'Escape') setLearning(null);
    const can = canBePedal(key);
    const facts = { keyName: say(keyName(key)), action: message(`pedal.${action}`) };
    if (can === 'types-value') setTold(message('pedal.types-value', facts));
    if (can !== 'yes') return;
    setLearning(null);
    const other = pedalActionOf(key, { ...pedalKeys, [action]: null }, false);
    const usual = usualWords(key);
    const before = other ? message(`pedal.${other}`) : usual && message(usual);
    setTold(before ? message('pedal.instead', { ...facts, before }) : message('pedal.learned', facts));
    save(action, key);
  }

  return (
    <fieldset className={css.pedals} ref={clearing}>
      <legend>{say('pedal.title')}</legend>
      <p className="soft">{say('pedal.lead')}</p>
      <ul className="list">
        {pedalActions.map((action) => {
          const key = pedalKeys[action];
          const words = { action: say(`pedal.${action}`) };
          return (
            <li key={action} className={css.pedal}>
              <span>{words.action}</span>
              <kbd>{key === null ? say('pedal.no-key') : say(keyName(key))}</kbd>
              <span className={css.set}>
                <Button
                  kind={learning === action ? 'main' : 'plain'}
                  aria-label={learning === action ? undefined : say('pedal.set-for', words)}
                  data-pedal={action}
                  onClick={() => {
                    setLearning(action);
                    setTold(null);
                  }}
                  onKeyDown={(event) => learn(event, action)}
                  onBlur={() => setLearning(null)}
                >
                  {say(learning === action ? 'pedal.press-now' : 'pedal.set')}
                </Button>
                {key !== null && (
                  <Button
                    kind="quiet"
                    aria-label={say('pedal.clear-for', words)}
                    onClick={() => {
                      // This button goes with the key.
                      clearing.current?.querySelector<HTMLElement>(`[data-pedal="${action}"]`)?.focus();
                      setTold(null);
                      save(action, null);
                    }}
                  >
                    {say('pedal.clear')}
                  </Button>
                )}
              </span>
            </li>
          );
        })}
      </ul>
      <p role="status">{told && say(told)}</p>
    </fieldset>
  );
}
