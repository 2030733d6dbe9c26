import type { Backup } from '../../../shared-core/contract/backups.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { BackupChoice } from '../backups/BackupChoice.tsx';
import { RestoreFromFile } from '../backups/RestoreFromFile.tsx';

/**
 * Any backup or other yard file, to put in the place of a yard that cannot be used.
 * @param shown  the backup that the page already shows
 */
export function BackupsToRestore({ shown }: { shown: Backup | null }) {
  const { say } = useWords();
  const state = useQuery('backups.state', {}).output;
  return (
    <Sheet
      title={say(shown ? 'damaged.other-backups' : 'backups.title')}
      actions={state && <RestoreFromFile hasDialogs={state.hasDialogs} />}
    >
      <BackupChoice shown={shown} none={say(shown ? 'damaged.no-other-backup' : 'damaged.no-backup')} />
    </Sheet>
  );
}
