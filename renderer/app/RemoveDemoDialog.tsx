import { Actions, Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { useWords } from '../words.ts';

/** Asks before the demo yard goes, wherever its removal is offered. */
export function RemoveDemoDialog({ onRemove, onClose }: { onRemove: () => void; onClose: () => void }) {
  const { say } = useWords();
  return (
    <Dialog title={say('demo.remove-question')} onClose={onClose}>
      <p>{say('demo.remove-effect')}</p>
      <Actions>
        <Button kind="danger" onClick={onRemove}>
          {say('demo.remove')}
        </Button>
        <Button onClick={onClose}>{say('common.cancel')}</Button>
      </Actions>
    </Dialog>
  );
}
