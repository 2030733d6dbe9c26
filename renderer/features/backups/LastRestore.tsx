import { useState } from 'react';
import type { BackupState } from '../../../shared-core/contract/backups.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { MissingNames, partsOf } from './Inside.tsx';
import { RestoreDialog } from './RestoreDialog.tsx';
import { UndoDamagedDialog } from './UndoDamagedDialog.tsx';

/** What is missing since the last restore, and the way back. */
export function LastRestore({ state: { restored } }: { state: BackupState }) {
  const { say, formats } = useWords();
  const [isAsking, setAsking] = useState(false);
  if (!restored) return null;
  const { backedUpAt, restoredAt, missing, undoFile, wasDamaged, wasMerged } = restored;
  const parts = missing && partsOf(missing);
  const close = () => setAsking(false);
  return (
    <>
      <Banner
        actions={
          <Button onClick={() => setAsking(true)}>
            {say(wasMerged ? 'restore.undo-merge' : 'restore.undo')}
          </Button>
        }
      >
        {wasMerged
          ? say('restore.merged', { restoredOn: restoredAt })
          : backedUpAt === null
            ? say('restore.file-restored', { restoredOn: restoredAt })
            : say('restore.backup-restored', {
                restoredOn: restoredAt,
                backedUpText: formats.dateTime(backedUpAt, true),
              })}{' '}
        {parts && parts.length > 0 && (
          <>
            {say('restore.missing-since', { parts })} <MissingNames missing={missing} />
          </>
        )}
        {parts?.length === 0 && !wasMerged && say('restore.nothing-lost')}
      </Banner>
      {isAsking &&
        (wasDamaged ? (
          <UndoDamagedDialog onClose={close} />
        ) : (
          <RestoreDialog file={undoFile} of={wasMerged ? 'last-merge' : 'last-restore'} onClose={close} />
        ))}
    </>
  );
}
