import { Actions, Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { roundKeys } from './round-keys.ts';

/** The keys of a round. */
export function KeysDialog({ onClose }: { onClose: () => void }) {
  return (
    <Dialog title="Keys in a round" onClose={onClose}>
      <dl className="keys-list">
        {roundKeys.map(({ keys, does }) => (
          <div key={keys}>
            <dt>
              <kbd>{keys}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <Actions>
        <Button kind="main" onClick={onClose} autoFocus>
          Close
        </Button>
      </Actions>
    </Dialog>
  );
}
