import { Actions, Button } from './Button.tsx';
import { Dialog } from './Dialog.tsx';

/** Asks before the demo yard goes, wherever its removal is offered. */
export function RemoveDemoDialog({ onRemove, onClose }: { onRemove: () => void; onClose: () => void }) {
  return (
    <Dialog title="Remove the demo yard?" onClose={onClose}>
      <p>
        The invented stacks, boards and readings go, with anything you tried on them. Your own yard opens;
        nothing in it changes. The demo can be opened again later, as new.
      </p>
      <Actions>
        <Button kind="danger" onClick={onRemove}>
          Remove the demo
        </Button>
        <Button onClick={onClose}>Keep it</Button>
      </Actions>
    </Dialog>
  );
}
