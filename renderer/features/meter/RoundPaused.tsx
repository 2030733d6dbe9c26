import { usePausedRound } from '../../data/usePausedRound.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Banner } from '../../ui/Banner.tsx';
import { ButtonLink } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** That a round waits, and the way back to it. */
export function RoundPaused() {
  const { say } = useWords();
  const paused = usePausedRound();
  if (paused === null) return null;
  const { id, stackName } = paused;
  return (
    <Banner
      kind="caution"
      actions={
        <ButtonLink kind="main" href={hrefOf({ name: 'round', id })}>
          {say('meter.back-to-round')}
        </ButtonLink>
      }
    >
      {say('meter.round-paused', { stackName })}
    </Banner>
  );
}
