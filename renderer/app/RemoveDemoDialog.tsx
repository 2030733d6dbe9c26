import { go } from '../stores/navigation.ts';
import { attempt, tellDone } from '../stores/notices.ts';
import { removeDemoYard } from '../stores/yard.ts';
import { Actions, Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { useWords } from '../words.ts';

/** Asks before the demo yard goes, wherever its removal is offered. */
export function RemoveDemoDialog({ onClose }: { onClose: () => void }) {
  const { say } = useWords();
  function remove(): void {
    onClose();
    void attempt(
      removeDemoYard().then(() => {
        go({ name: 'stacks' });
        tellDone(say('demo.removed'));
      }),
    );
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
