import { type RefObject, useEffect, useId } from 'react';
import { useMeter } from '../../stores/meter.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { MeterElsewhere } from '../meter/MeterElsewhere.tsx';
import css from './ValuePanel.module.css';

/** The same round without a live meter: the reading is typed. The field has the focus. */
export function TypedPanel({
  value,
  fieldRef,
  isBoardDone,
  onValue,
  onUseMeter,
}: {
  value: string;
  fieldRef: RefObject<HTMLInputElement | null>;
  isBoardDone: boolean;
  onValue: (value: string) => void;
  /** Null where no meter is live in this window. */
  onUseMeter: (() => void) | null;
}) {
  const id = useId();
  const { say } = useWords();
  const meter = useMeter((store) => store.state);
  useEffect(() => fieldRef.current?.focus(), [fieldRef]);
  const isTryingAgain = meter?.phase === 'reconnecting' || meter?.phase === 'failed';
  return (
    <div className={css.typed}>
      <MeterElsewhere />
      <div className={css.label}>
        <label htmlFor={id}>{say('typed.label')}</label>
        {onUseMeter ? (
          <Button kind="quiet" shortcut={say('key.escape')} onClick={onUseMeter}>
            {say('typed.use-meter')}
          </Button>
        ) : (
          meter?.phase !== 'live' && (
            <ButtonLink kind="quiet" href={hrefOf({ name: 'meter' })}>
              {say('typed.connect-meter')}
            </ButtonLink>
          )
        )}
      </div>
      <input
        id={id}
        ref={fieldRef}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        aria-describedby={`${id}-how`}
        value={value}
        onChange={(event) => onValue(event.target.value)}
      />
      <p id={`${id}-how`} className={isTryingAgain ? css.trouble : css.how}>
        {isTryingAgain ? say(meter.message) : say(isBoardDone ? 'typed.hint-done' : 'typed.hint')}
      </p>
    </div>
  );
}
