import { bridge } from '../data/bridge.ts';
import { useQuery } from '../data/useQuery.ts';
import { hrefOf } from '../stores/navigation.ts';
import { attempt } from '../stores/notices.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button, ButtonLink } from '../ui/Button.tsx';
import { useWords } from '../words.ts';

/** The newest backup could not be made: why, and the ways on. Readings are saved all the same. */
export function BackupBanner() {
  const { say } = useWords();
  const problem = useQuery('backups.state', {}).output?.problem;
  if (!problem) return null;
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
      {say('backups.failed', { why: problem })}
    </Banner>
  );
}
