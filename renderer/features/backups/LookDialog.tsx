import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { Inside } from './Inside.tsx';

/** Shows what is in a yard file, and does nothing with it. */
export function LookDialog({ file, onClose }: { file: string; onClose: () => void }) {
  const { say } = useWords();
  const look = useQuery('backups.look', { file });
  return (
    <Dialog title={say('restore.inside')} onClose={onClose}>
      <p className="file" translate="no">
        {file}
      </p>
      <Await of={[look]}>{(found) => <Inside look={found} />}</Await>
      <Actions>
        <Button onClick={onClose}>{say('common.close')}</Button>
      </Actions>
    </Dialog>
  );
}
