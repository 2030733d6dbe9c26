import { useState } from 'react';
import { attempt } from '../../stores/notices.ts';
import { salvageYard } from '../../stores/yard.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** Saves what can be read of the damaged yard, and opens that. */
export function SalvageButton({ isMain }: { isMain: boolean }) {
  const { say } = useWords();
  const [isBusy, setBusy] = useState(false);
  return (
    <div>
      <Button
        kind={isMain ? 'main' : 'plain'}
        onClick={async () => {
          if (isBusy) return;
          setBusy(true);
          await attempt(salvageYard());
          setBusy(false);
        }}
      >
        {say('salvage.do')}
      </Button>
      <p role="status">{isBusy ? say('salvage.busy') : ''}</p>
    </div>
  );
}
