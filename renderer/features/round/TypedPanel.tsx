import { useEffect, useId } from 'react';
import { isLinkLost, useLink } from '../../stores/link.ts';
import { useMeter } from '../../stores/meter.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useRound } from '../../stores/round.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { MeterElsewhere } from '../meter/MeterElsewhere.tsx';
import { UnusedAfar } from './UnusedAfar.tsx';
import type { Probing } from './useProbing.ts';
import css from './ValuePanel.module.css';

/** The same round without a live meter: the reading is typed. The field has the focus. */
export function TypedPanel(probing: Probing) {
  const { typing, typedFrom, typedUnit: unit, field, type, meterIsLive, act } = probing;
  const id = useId();
  const { say } = useWords();
  const meter = useMeter((store) => store.state);
  const saved = useRound((store) => store.saved);
  const savedHere = saved?.board.boardId === probing.board.boardId ? saved.reading : null;
  useEffect(() => field.current?.focus(), [field]);
  return (
    <div className={`sheet ${css.typed}`}>
      <MeterElsewhere />
      {probing.isFar && <LostAfar />}
      {probing.isFar && probing.fieldIsEmpty && savedHere && (
        <UnusedAfar reading={savedHere} className={css.lost} />
      )}
      <div className={css.label}>
        <label htmlFor={id}>{say('typed.label', { unit })}</label>
        {typedFrom && (
          <Button
            kind="quiet"
            aria-label={say('typed.meter', { meterName: typedFrom.name })}
            onClick={() => act('meter')}
          >
            <span translate="no">{typedFrom.name}</span>
          </Button>
        )}
        {meterIsLive ? (
          <Button kind="quiet" shortcut={say('key.escape')} onClick={() => act('stop-typing')}>
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
        ref={field}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        aria-describedby={`${id}-how`}
        value={typing ?? ''}
        onChange={({ target }) => type(target.value)}
      />
      <How id={`${id}-how`} {...probing} />
    </div>
  );
}

/** That the meter or the machine is lost, to be read from two meters away; the line under the field says more. */
function LostAfar() {
  const { say } = useWords();
  const isLost = useLink(isLinkLost);
  const phase = useMeter(({ state }) => state?.phase);
  if (!isLost && phase !== 'reconnecting' && phase !== 'failed') return null;
  return (
    <p className={css.lost}>
      {isLost ? say('round.nothing-saved.far') : say('round.meter-lost.far', { phase: phase ?? 'failed' })}
    </p>
  );
}

/** What Enter does with what is typed. While the link is lost, that it saves nothing: again at each try. */
function How({ id, fieldIsEmpty, spotIndex, savesFor, typedUnit: unit }: Probing & { id: string }) {
  const { say } = useWords();
  const meter = useMeter((store) => store.state);
  const link = useLink();
  if (isLinkLost(link)) {
    return (
      <small
        id={id}
        key={link.tries}
        className={`${css.trouble} ${css.again}`}
        role={link.tries > 0 ? 'alert' : undefined}
      >
        {say(fieldIsEmpty ? 'round.nothing-saved' : 'typed.not-saved')}
      </small>
    );
  }
  const isTryingAgain = meter?.phase === 'reconnecting' || meter?.phase === 'failed';
  return (
    <small id={id} className={isTryingAgain ? css.trouble : css.how}>
      {isTryingAgain ? say(meter.message) : (spotIndex !== null || savesFor) && say('typed.hint', { unit })}
    </small>
  );
}
