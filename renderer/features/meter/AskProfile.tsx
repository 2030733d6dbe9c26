import { useState } from 'react';
import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ProfileForm } from './ProfileForm.tsx';

/**
 * Asks once what a meter is set to; one press says that it is unknown.
 * @param meter    null: a hand meter that has no name yet
 * @param roundId  the round in which it is asked
 */
export function AskProfile({ meter, roundId }: { meter: MeterOfYard | null; roundId?: number }) {
  const { say } = useWords();
  const [isAnswering, setAnswering] = useState(false);

  async function saveUnknown(): Promise<void> {
    const profile = unknownProfile;
    const saved = await attempt<unknown>(
      meter
        ? bridge().command('meters.edit', { id: meter.id, basedOn: meter.version, changed: { profile } })
        : bridge().command('meters.add', {
            name: say('meter-profile.usual-name'),
            profile,
            roundId: roundId ?? null,
          }),
    );
    if (saved) tellDone(say('meter-profile.unknown-saved'));
  }

  return (
    <>
      <Banner
        actions={
          <>
            <Button onClick={() => setAnswering(true)}>{say('meter-profile.answer')}</Button>
            <Button onClick={saveUnknown}>{say('meter-profile.unknown')}</Button>
          </>
        }
      >
        {meter ? say('meter-profile.question-of', { meterName: meter.name }) : say('meter-profile.question')}
      </Banner>
      {isAnswering && (
        <ProfileForm meter={meter} {...(roundId && { roundId })} onClose={() => setAnswering(false)} />
      )}
    </>
  );
}
