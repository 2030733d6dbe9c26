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
 * @param isOhms   what was typed is no %, but may well be megohms
 */
export function AskProfile({
  meter,
  roundId,
  isOhms = false,
}: {
  meter: MeterOfYard | null;
  roundId?: number;
  isOhms?: boolean;
}) {
  const { say } = useWords();
  const [isAnswering, setAnswering] = useState(false);

  async function saveUnknown(): Promise<void> {
    const profile = unknownProfile;
    const done = say('meter-profile.unknown-saved');
    if (meter === null) {
      const name = say('meter-profile.usual-name', { number: 1 });
      const added = await attempt(
        bridge().command('meters.add', { name, profile, roundId: roundId ?? null }),
      );
      if (added) tellDone(done);
      return;
    }
    const changed = { profile };
    const edit = { id: meter.id, basedOn: meter.version, changed };
    // It can be answered otherwise, but not left unasked again.
    if (await attempt(bridge().command('meters.edit', edit))) tellDone(done);
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
        {meter
          ? say('meter-profile.question-of', { meterName: meter.name })
          : say(isOhms ? 'meter-profile.question-ohms' : 'meter-profile.question')}
      </Banner>
      {isAnswering && (
        <ProfileForm meter={meter} {...(roundId && { roundId })} onClose={() => setAnswering(false)} />
      )}
    </>
  );
}
