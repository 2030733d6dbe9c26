import { bridge } from '../data/bridge.ts';
import { useQuery } from '../data/useQuery.ts';
import { dismissForNow, useDismissed } from '../stores/dismissed.ts';
import { isLinkLost, useLink } from '../stores/link.ts';
import { hrefOf, useNavigation } from '../stores/navigation.ts';
import { attempt } from '../stores/notices.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button, ButtonLink } from '../ui/Button.tsx';
import { useWords } from '../words.ts';

/**
 * The newest backup could not be made, or not where the person wants it: why, and the ways on. Readings are saved all the
 * same.
 */
export function BackupBanner() {
  const { say } = useWords();
  const state = useQuery('backups.state', {}).output;
  const isLost = useLink(isLinkLost);
  const isHere = useNavigation(({ route }) => route.name === 'backups');
  const { sentences: dismissed } = useDismissed();
  if (!state) return null;
  const { problem, elsewhere } = state;
  const sentence = problem ? say('backups.failed', { why: problem }) : elsewhere && say(elsewhere);
  // On the page of the backups it is the answer to what a person looks for.
  if (!sentence || (!isHere && dismissed.includes(sentence))) return null;
  return (
    <Banner
      kind="caution"
      actions={
        <>
          {!isLost && (
            <Button onClick={() => attempt(bridge().command('backups.make', {}))}>
              {say('common.try-again')}
            </Button>
          )}
          {!isHere && (
            <>
              <ButtonLink href={hrefOf({ name: 'backups' })}>{say('backups.go')}</ButtonLink>
              <Button kind="quiet" onClick={() => dismissForNow(sentence)}>
                {say('frame.dismiss')}
              </Button>
            </>
          )}
        </>
      }
    >
      {sentence}
    </Banner>
  );
}
