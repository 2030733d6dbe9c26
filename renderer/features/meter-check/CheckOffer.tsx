import { useState } from 'react';
import type { CheckedMeter } from '../../../shared-core/contract/meter-checks.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { useQuery } from '../../data/useQuery.ts';
import { isLiveHere, useMeter } from '../../stores/meter.ts';
import { useTypingMeter } from '../../stores/typing-meter.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { CheckDialog } from './CheckDialog.tsx';
import { CorrectOffer } from './CorrectOffer.tsx';
import { offOf } from './check-sentence.ts';

/** Its newest check found it off, and its values are not corrected for that. */
const isOff = ({ last, toCorrect }: CheckedMeter): boolean =>
  last?.state === 'too-far' || (last?.state === 'off' && toCorrect !== null);

function sentenceOf({ block: { name: blockName }, meterName, unit, last }: CheckedMeter, say: Say): string {
  if (last === null) return say('meter-check.due.first', { meterName, blockName });
  const when = { meterName, lastAt: last.at };
  if (last.state === 'right') return say('meter-check.due.again', when);
  const off = Math.abs(offOf(last, unit));
  return unit === 'pct'
    ? say('meter-check.was-off.pct', { ...when, offPoints: off })
    : say('meter-check.was-off.ohm', { ...when, offSharePct: 100 * off });
}

/**
 * Before a round: says that the meter it will be read from was off, and offers to check it, where that is due. It never
 * blocks.
 */
export function CheckOffer() {
  const { say, formats } = useWords();
  const checked = useQuery('meterChecks.list', {}).output;
  const typedFrom = useTypingMeter();
  const connectedId = useMeter((meter) => (isLiveHere(meter) ? (meter.state?.meterId ?? null) : null));
  const [openId, setOpenId] = useState<number | null>(null);
  const [correctingId, setCorrectingId] = useState<number | null>(null);
  const meterId = connectedId ?? typedFrom?.id;
  const own = checked?.filter(({ block, right }) => block.meterId === meterId && right !== null) ?? [];
  const off = own.find(isOff);
  const shown = off ?? own.find(({ isDue }) => isDue);
  const open = own.find(({ block }) => block.id === openId);
  const { last = null, toCorrect = null } = off ?? {};
  const isCorrecting = toCorrect !== null && correctingId === toCorrect.checkId;
  return (
    <>
      {shown && (
        <Banner
          kind={off ? 'caution' : 'info'}
          actions={
            <>
              <Button
                aria-label={say('meter-check.of', { meterName: shown.meterName })}
                onClick={() => setOpenId(shown.block.id)}
              >
                {say('meter-check.press')}
              </Button>
              {toCorrect && (
                <Button
                  aria-expanded={isCorrecting}
                  onClick={() => setCorrectingId(isCorrecting ? null : toCorrect.checkId)}
                >
                  {say('meter-check.correct-it')}
                </Button>
              )}
            </>
          }
        >
          <p>{sentenceOf(shown, say)}</p>
          {last?.state === 'too-far' && <p>{say('meter-check.far')}</p>}
        </Banner>
      )}
      {last && toCorrect && isCorrecting && (
        <CorrectOffer
          {...toCorrect}
          rightValue={rawText(last.right, shown?.unit ?? 'pct', formats)}
          onNotNow={() => setCorrectingId(null)}
        />
      )}
      {open && <CheckDialog of={open} onClose={() => setOpenId(null)} />}
    </>
  );
}
