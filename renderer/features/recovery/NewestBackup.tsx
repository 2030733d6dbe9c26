import { useState } from 'react';
import type { ReadableBackup } from '../../../shared-core/contract/newest-backup.ts';
import { Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { RestoreDialog } from '../backups/RestoreDialog.tsx';

/**
 * The newest backup that can be read, and its restoring after a look inside.
 * @param hasAll  whether it has everything that was saved, so that it is the better of two ways
 * @param isMain  whether its button is the main one
 */
export function NewestBackup({
  backup: { file, at, contents },
  hasAll = false,
  isMain,
}: {
  backup: ReadableBackup;
  hasAll?: boolean;
  isMain: boolean;
}) {
  const { say, formats } = useWords();
  const [isAsking, setAsking] = useState(false);
  const { boards, readings, lastRoundAt } = contents;
  const backedUpText = formats.dateTime(at, true);
  return (
    <Sheet title={say('damaged.backup-title')}>
      <p>
        {say('damaged.backup-of', { backedUpText, boards, readings })}{' '}
        {lastRoundAt !== null && say('damaged.backup-last-round', { lastRoundAt })}
      </p>
      {hasAll && <p>{say('damaged.backup-has-all')}</p>}
      <div>
        <Button
          kind={isMain ? 'main' : 'plain'}
          aria-label={say('restore.newest', { backedUpText })}
          onClick={() => setAsking(true)}
        >
          {say('damaged.restore')}
        </Button>
        {isAsking && <RestoreDialog file={file} of={{ backedUpAt: at }} onClose={() => setAsking(false)} />}
      </div>
    </Sheet>
  );
}
