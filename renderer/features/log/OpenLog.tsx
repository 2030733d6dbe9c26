import { useState } from 'react';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { LogDialog } from './LogDialog.tsx';

/** Opens the fault log: in the computer's own program, or where there is none over the screen. */
export function OpenLog({ kind }: { kind?: 'quiet' }) {
  const { say } = useWords();
  const [shown, setShown] = useState<RequestOutput<'log.open'> | null>(null);

  async function open(): Promise<void> {
    const opened = await attempt(bridge().command('log.open', {}));
    if (!opened) return;
    if (opened.text === null) tellDone(say('log.opened'));
    else setShown(opened);
  }

  return (
    <>
      <Button kind={kind} onClick={open}>
        {say('log.open')}
      </Button>
      {shown?.text != null && <LogDialog {...shown} text={shown.text} onClose={() => setShown(null)} />}
    </>
  );
}
