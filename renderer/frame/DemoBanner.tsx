import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { RemoveDemoDialog } from '../parts/RemoveDemoDialog.tsx';
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
        <RemoveDemoDialog onRemove={() => leaveBy(removeDemoYard)} onClose={() => setAsking(false)} />
      )}
    </aside>
  );
}
