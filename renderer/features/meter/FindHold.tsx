import { useEffect, useState } from 'react';
import type { Condition } from '../../../shared-core/gatt/layout.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import { proposeHold } from '../../../shared-core/gatt/propose-fields.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import type { BesideProps } from './BesideValue.tsx';
import { descriptionOf, newestOf } from './found.ts';

/** Finds what in the packets says that the meter's button is pressed. */
export function FindHold({ found, fields, onFields }: BesideProps) {
  const { say } = useWords();
  const [sinceMs, setSinceMs] = useState<number | null>(null);
  const { packets, proposal } = found;
  const newest = newestOf(found);
  const pressed: Condition | undefined =
    sinceMs === null ? undefined : proposeHold(packets, proposal.value, sinceMs)[0];

  useEffect(() => {
    if (pressed === undefined) return;
    setSinceMs(null);
    onFields({ hold: pressed });
  }, [pressed, onFields]);

  if (sinceMs !== null) {
    return (
      <Banner actions={<Button onClick={() => setSinceMs(null)}>{say('common.cancel')}</Button>}>
        {say('watch.hold.press')}
      </Banner>
    );
  }
  const look = () => setSinceMs(performance.now());
  if (fields.hold === null) {
    return (
      <Actions>
        <Button onClick={look}>{say('watch.hold.find')}</Button>
      </Actions>
    );
  }
  const isHeld = newest !== null && decodePacket(newest, descriptionOf(proposal, fields)).isHeld;
  return (
    <Banner
      kind="done"
      actions={
        <>
          <Button onClick={look}>{say('watch.find-again')}</Button>
          <Button onClick={() => onFields({ hold: null })}>{say('watch.hold.drop')}</Button>
        </>
      }
    >
      {say('watch.hold.found', { isHeld: isHeld ? 'yes' : 'no' })}
    </Banner>
  );
}
