import { tellDone } from '../stores/notices.ts';
import { goToYard, removeDemoYard } from '../stores/yard.ts';
import { Actions, Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { useWords } from '../words.ts';

/** Asks before the demo yard goes, wherever its removal is offered. */
export function RemoveDemoDialog({ onClose }: { onClose: () => void }) {
  const { say } = useWords();
  function remove(): void {
    onClose();
    void goToYard(() => removeDemoYard().then(() => tellDone(say('demo.removed'))));
  }
  return (
    <Dialog title={say('demo.remove-question')} onClose={onClose}>
      <p>{say('demo.remove-effect')}</p>
      <Actions>
        <Button kind="danger" onClick={remove}>
          {say('demo.remove')}
        </Button>
        <Button onClick={onClose}>{say('common.cancel')}</Button>
      </Actions>
    </Dialog>
  );
}
