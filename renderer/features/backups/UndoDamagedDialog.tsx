import { useSaving } from '../../form/useSaving.ts';
import { undoRestore, useYard } from '../../stores/yard.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';

/** Brings back the damaged yard that a restore replaced: there is nothing inside to look at. */
export function UndoDamagedDialog({ onClose }: { onClose: () => void }) {
  const { say } = useWords();
  const isOpen = useYard(({ info }) => info?.problem == null);
  const { busy, problem, save } = useSaving(onClose);
  return (
    <Dialog title={say('restore.undo-question')} onClose={onClose}>
      <p>
        {say('restore.undo-damaged')} {isOpen && say('restore.backed-up-first')}
      </p>
      {problem && <Banner kind="problem">{problem.sentence}</Banner>}
      <Actions>
        <Button kind="main" onClick={() => save(undoRestore)}>
          {say(busy ? 'restore.restoring' : 'restore.undo-yes')}
        </Button>
        <Button onClick={onClose}>{say('common.cancel')}</Button>
      </Actions>
    </Dialog>
  );
}
