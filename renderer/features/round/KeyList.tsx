import { useEffect, useRef } from 'react';
import { pedalActionOf, pedalActions } from '../../../shared-core/hands-free/pedal-keys.ts';
import { useSettings } from '../../stores/settings.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { HelpLink } from '../../ui/HelpLink.tsx';
import { useWords } from '../../words.ts';
import { keyName } from '../settings/key-name.ts';
import { NextBoardChoice } from '../settings/NextBoardChoice.tsx';
import css from './KeyList.module.css';
import { firstKeys, roundKeys } from './round-keys.ts';
import type { Probing } from './useProbing.ts';

/** Keys of a round, each with what it does, the first ones in front: all of them, or what a newcomer needs. */
export function KeyList({ isLive, onlyFirst = false }: { isLive: boolean; onlyFirst?: boolean }) {
  const { say } = useWords();
  const pedalKeys = useSettings(({ settings }) => settings.pedalKeys);
  const first = firstKeys(isLive);
  const rankOf = ({ does }: (typeof roundKeys)[number]): number =>
    first.indexOf(does) + 1 || roundKeys.length;
  const listed = onlyFirst ? roundKeys.filter(({ does }) => first.includes(does)) : roundKeys;
  /** A key that a pedal sends does only what the pedal is for. */
  const isUsual = (key: string): boolean => pedalActionOf(key, pedalKeys, false) === null;
  return (
    <dl className={css.keys}>
      {pedalActions.map((action) => {
        const key = pedalKeys[action];
        if (key === null) return null;
        return (
          <div key={action}>
            <dt>
              <kbd>{say('pedal.key', { keyName: keyName(key) })}</kbd>
            </dt>
            <dd>{say(`pedal.${action}`)}</dd>
          </div>
        );
      })}
      {listed
        .toSorted((a, b) => rankOf(a) - rankOf(b))
        .map(({ keys, does }) => {
          const shown =
            typeof keys === 'string' ? [say(keys)] : keys.filter(isUsual).map((key) => say(keyName(key)));
          return (
            shown.length > 0 && (
              <div key={does}>
                <dt>
                  <kbd>{shown.join(', ')}</kbd>
                </dt>
                <dd>{say(does)}</dd>
              </div>
            )
          );
        })}
    </dl>
  );
}

/** The keys of a round, and whether it goes on to the next board by itself. */
export function KeysDialog({ isScreenLeft, meterIsLive, onClose }: Probing) {
  const { say } = useWords();
  const close = useRef<HTMLButtonElement>(null);
  // Its button stays in sight below all keys; the title would scroll out of it.
  useEffect(() => close.current?.focus({ preventScroll: true }), []);
  return (
    <Dialog title={say('round-keys.title')} onClose={onClose}>
      {isScreenLeft && <p>{say('wake.what-to-do')}</p>}
      <NextBoardChoice />
      <KeyList isLive={meterIsLive} />
      <p className="soft">{say('round-start.pins-along')}</p>
      <HelpLink chapter="pins" />
      <Actions>
        <Button kind="main" ref={close} onClick={onClose}>
          {say('common.close')}
        </Button>
      </Actions>
    </Dialog>
  );
}
