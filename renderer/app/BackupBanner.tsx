import { bridge } from '../data/bridge.ts';
import { useQuery } from '../data/useQuery.ts';
import { hrefOf } from '../stores/navigation.ts';
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
  if (!state) return null;
  const { problem, elsewhere } = state;
  const told = problem ? say('backups.failed', { why: problem }) : elsewhere && say(elsewhere);
  if (!told) return null;
  return (
    <Banner
      kind="caution"
      actions={
        <>
          <Button onClick={() => attempt(bridge().command('backups.make', {}))}>
            {say('common.try-again')}
          </Button>
          <ButtonLink href={hrefOf({ name: 'backups' })}>{say('backups.go')}</ButtonLink>
        </>
      }
    >
      {told}
    </Banner>
  );
}
