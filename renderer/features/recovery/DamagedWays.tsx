import type { ReadableBackup } from '../../../shared-core/contract/newest-backup.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import css from './damaged-ways.module.css';
import { NewestBackup } from './NewestBackup.tsx';
import { SalvageButton } from './SalvageButton.tsx';

/**
 * The two ways on with a damaged yard, side by side. Without a backup that can be read there is one.
 * @param newest  the newest backup; null where there is none, undefined while that is not known
 */
export function DamagedWays({ newest }: { newest: ReadableBackup | null | undefined }) {
  const { say } = useWords();
  const newestAct = useQuery('recovery.newestActAt', {}).output;
  const hasAll = Boolean(newest?.isOfPresent && typeof newestAct === 'string' && newestAct <= newest.at);
  const about = newest ? (hasAll ? 'damaged.recover-older' : 'damaged.recover-newer') : 'damaged.no-backup';
  return (
    <>
      <div className={css.ways}>
        <Sheet title={say('damaged.recover-title')}>
          {newest !== undefined && <p>{say(about)}</p>}
          <SalvageButton isMain={!hasAll} />
        </Sheet>
        {newest && <NewestBackup backup={newest} hasAll={hasAll} isMain={hasAll} />}
      </div>
      <p>{say(newest ? 'damaged.stays' : 'damaged.stays-alone')}</p>
    </>
  );
}
