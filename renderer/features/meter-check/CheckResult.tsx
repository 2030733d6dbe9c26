import { useState } from 'react';
import type { CheckedMeter, MeterCheck } from '../../../shared-core/contract/meter-checks.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { CorrectOffer } from './CorrectOffer.tsx';
import { checkSentence } from './check-sentence.ts';

/** What a check found, and where the meter is off, what can be done about it. */
export function CheckResult({
  of: { unit, block },
  found,
  onAgain,
  onClose,
}: {
  of: CheckedMeter;
  found: MeterCheck;
  onAgain: () => void;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const [isDone, setDone] = useState(false);
  const now = useQuery('meterChecks.list', {}).output?.find((each) => each.block.id === block.id);
  const toCorrect = now?.toCorrect?.checkId === found.id ? now.toCorrect : null;
  const isRight = found.state === 'right';
  return (
    <>
      <Banner kind={isRight ? 'done' : 'caution'}>
        <p>{checkSentence(found, unit, say)}</p>
        {!isRight && !isDone && <p>{say('meter-check.next-round')}</p>}
        {found.state === 'too-far' && <p>{say('meter-check.far')}</p>}
      </Banner>
      {toCorrect && !isDone && (
        <CorrectOffer
          {...toCorrect}
          rightValue={rawText(found.right, unit, formats)}
          onDone={() => setDone(true)}
          onNotNow={onClose}
        />
      )}
      {isDone && <p role="status">{say('meter-check.corrected')}</p>}
      <Actions>
        <Button kind={isRight || isDone ? 'main' : 'quiet'} onClick={onClose}>
          {say('common.close')}
        </Button>
        <Button kind="quiet" onClick={onAgain}>
          {say('meter-check.again')}
        </Button>
      </Actions>
    </>
  );
}
