import { useState } from 'react';
import type { Backup } from '../../../shared-core/contract/backups.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { RestoreDialog } from '../backups/RestoreDialog.tsx';
import css from './damaged-ways.module.css';
import { SalvageButton } from './SalvageButton.tsx';

/** The two ways on with a damaged yard, side by side. Without a backup that can be read there is one. */
export function DamagedWays({ hasBackups }: { hasBackups: boolean }) {
  const { say } = useWords();
  const backups = useQuery('backups.list', {}).output;
  const newestAct = useQuery('recovery.newestActAt', {}).output;
  const newest = hasBackups ? backups?.find(({ contents }) => contents !== null) : undefined;
  const hasAll = newest !== undefined && typeof newestAct === 'string' && newestAct <= newest.at;
  return (
    <>
      <div className={css.ways}>
        <Sheet title={say('damaged.recover-title')}>
          {newest && !hasAll && <Recommended />}
          <p>{say(hasAll ? 'damaged.recover-older' : 'damaged.recover-newer')}</p>
          <SalvageButton isMain={!hasAll} />
        </Sheet>
        {newest && (
          <Sheet title={say('damaged.backup-title')}>
            {hasAll && <Recommended />}
            <p>
              {say('damaged.backup-of', { backedUpAt: newest.at, readings: newest.contents?.readings ?? 0 })}
            </p>
            {hasAll && <p>{say('damaged.backup-has-all')}</p>}
            <RestoreButton backup={newest} isMain={hasAll} />
          </Sheet>
        )}
      </div>
      <p>{say('damaged.stays')}</p>
    </>
  );
}

function Recommended() {
  const { say } = useWords();
  return (
    <p className={css.recommended}>
      <span aria-hidden="true">★ </span>
      {say('damaged.recommended')}
    </p>
  );
}

/** Restores a backup after a look inside. */
export function RestoreButton({ backup: { file, at }, isMain }: { backup: Backup; isMain: boolean }) {
  const { say } = useWords();
  const [isAsking, setAsking] = useState(false);
  return (
    <div>
      <Button
        kind={isMain ? 'main' : 'plain'}
        aria-label={say('restore.newest', { backedUpAt: at })}
        onClick={() => setAsking(true)}
      >
        {say('damaged.restore')}
      </Button>
      {isAsking && <RestoreDialog file={file} onClose={() => setAsking(false)} />}
    </div>
  );
}
