import { useState } from 'react';
import { Actions, Button } from '../parts/Button.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { go } from '../stores/navigation.ts';
import { attempt } from '../stores/notices.ts';
import { openOwnYard, removeDemoYard } from '../stores/yard.ts';

/** Says on every screen that nothing in the demo yard is real, and leads out of it. */
export function DemoBanner() {
  const [asking, setAsking] = useState(false);
  async function leaveBy(way: () => Promise<void>): Promise<void> {
    setAsking(false);
    await attempt(way().then(() => go({ name: 'stacks' })));
  }
  return (
    <aside className="demo-banner" aria-label="Demo yard">
      <p>
        <strong>Demo yard: invented data.</strong>{' '}
        <span className="demo-banner-more">Try anything; your own yard is untouched.</span>
      </p>
      <Button kind="quiet" onClick={() => leaveBy(openOwnYard)}>
        Go to my own yard
      </Button>
      <Button kind="quiet" onClick={() => setAsking(true)}>
        Remove the demo
      </Button>
      {asking && (
        <Dialog title="Remove the demo yard?" onClose={() => setAsking(false)}>
          <p>
            The invented stacks, boards and readings go, with anything you tried on them. Your own yard opens;
            nothing in it changes. The demo can be opened again later, as new.
          </p>
          <Actions>
            <Button kind="danger" onClick={() => leaveBy(removeDemoYard)}>
              Remove the demo
            </Button>
            <Button onClick={() => setAsking(false)}>Keep it</Button>
          </Actions>
        </Dialog>
      )}
    </aside>
  );
}
