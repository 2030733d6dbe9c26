import { useState } from 'react';
import { go } from '../stores/navigation.ts';
import { attempt } from '../stores/notices.ts';
import { openOwnYard, removeDemoYard } from '../stores/yard.ts';
import { Button } from '../ui/Button.tsx';
import { useWords } from '../words.ts';
import { RemoveDemoDialog } from './RemoveDemoDialog.tsx';

/** Says on every screen that nothing in the demo yard is real, and leads out of it. */
export function DemoBanner() {
  const { say } = useWords();
  const [asking, setAsking] = useState(false);
  async function leaveBy(way: () => Promise<void>): Promise<void> {
    setAsking(false);
    await attempt(way().then(() => go({ name: 'stacks' })));
  }
  return (
    <aside className="demo-banner" aria-label={say('demo.name')}>
      <p>
        <strong>{say('demo.invented')}</strong> <span className="demo-banner-more">{say('demo.try')}</span>
      </p>
      <Button kind="quiet" onClick={() => leaveBy(openOwnYard)}>
        {say('demo.leave')}
      </Button>
      <Button kind="quiet" onClick={() => setAsking(true)}>
        {say('demo.remove')}
      </Button>
      {asking && (
        <RemoveDemoDialog onRemove={() => leaveBy(removeDemoYard)} onClose={() => setAsking(false)} />
      )}
    </aside>
  );
}
