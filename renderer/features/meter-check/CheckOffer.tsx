import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { isLiveHere, useMeter } from '../../stores/meter.ts';
import { useTypingMeter } from '../../stores/typing-meter.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { CheckDialog } from './CheckDialog.tsx';

/** Before a round: offers to check the meter that it will be read from, where a person wanted that. It never blocks. */
export function CheckOffer() {
  const { say } = useWords();
  const checked = useQuery('meterChecks.list', {}).output;
  const typedFrom = useTypingMeter();
  const connectedId = useMeter((meter) => (isLiveHere(meter) ? (meter.state?.meterId ?? null) : null));
  const [openId, setOpenId] = useState<number | null>(null);
  const meterId = connectedId ?? typedFrom?.id;
  const own = checked?.filter(({ block, right }) => block.meterId === meterId && right !== null) ?? [];
  const due = own.find(({ isDue }) => isDue);
  const open = own.find(({ block }) => block.id === openId);
  return (
    <>
      {due && (
        <Banner
          actions={
            <Button
              aria-label={say('meter-check.of', { meterName: due.meterName })}
              onClick={() => setOpenId(due.block.id)}
            >
              {say('meter-check.press')}
            </Button>
          }
        >
          {due.last
            ? say('meter-check.due.again', { meterName: due.meterName, lastAt: due.last.at })
            : say('meter-check.due.first', { meterName: due.meterName, blockName: due.block.name })}
        </Banner>
      )}
      {open && <CheckDialog of={open} onClose={() => setOpenId(null)} />}
    </>
  );
}
