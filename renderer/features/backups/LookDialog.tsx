import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { Inside } from './Inside.tsx';

/** Shows what is in a backup, and does nothing with it. */
export function LookDialog({ file, at, onClose }: { file: string; at: string; onClose: () => void }) {
  const { say, formats } = useWords();
  const look = useQuery('backups.look', { file });
  return (
    <Dialog title={say('restore.inside', { backedUpText: formats.dateTime(at, true) })} onClose={onClose}>
      <p className="file" translate="no">
        {file}
      </p>
      <Await of={[look]}>{(found) => <Inside look={found} source="backup" />}</Await>
      <Actions>
        <Button onClick={onClose}>{say('common.close')}</Button>
      </Actions>
    </Dialog>
  );
}
