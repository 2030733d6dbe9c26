import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { Banner } from '../../ui/Banner.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { CorrectOffer } from './CorrectOffer.tsx';
import { checkSentence } from './check-sentence.ts';

/** That the meter of a round was off when it was checked before, why, and the press that corrects its readings. */
export function QuestionableMeter({
  roundId,
  hasOffer = true,
}: {
  roundId: number;
  /** False while probing: the reason is enough there. */
  hasOffer?: boolean;
}) {
  const { say, formats } = useWords();
  const found = useQuery('meterChecks.ofRound', { roundId }).output;
  const [later, setLater] = useState<readonly number[]>([]);
  return found?.map(({ meterName, unit, check, readings, toCorrect }) => (
    <div key={check.id} className="column">
      <Banner kind="caution">
        <p>{say('meter-check.round', { readings, meterName, checkedAt: check.at })}</p>
        {hasOffer && <p>{checkSentence(check, unit, say)}</p>}
        {hasOffer && check.state === 'too-far' && <p>{say('meter-check.far')}</p>}
      </Banner>
      {hasOffer && toCorrect !== null && !later.includes(check.id) && (
        <CorrectOffer
          checkId={check.id}
          readings={toCorrect}
          rightValue={rawText(check.right, unit, formats)}
          onNotNow={() => setLater([...later, check.id])}
        />
      )}
    </div>
  ));
}
