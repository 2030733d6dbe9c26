import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ReopenForm } from '../closing/ReopenForm.tsx';
import { StackEnding } from './StackEnding.tsx';

/** On the page of a stack that left the lists: since when, and the way back. */
export function ClosedStack({ stack, closedAt }: { stack: StackRow; closedAt: string }) {
  const { say } = useWords();
  const [open, setOpen] = useState<'reopen' | 'delete' | null>(null);
  const close = () => setOpen(null);
  const { id, version: basedOn } = stack;
  return (
    <>
      <Banner
        actions={
          <>
            <Button kind="main" onClick={() => setOpen('reopen')}>
              {say('closing.reopen')}
            </Button>
            {stack.lastRoundId !== null && (
              <ButtonLink href={hrefOf({ name: 'round', id: stack.lastRoundId })}>
                {say('stacks.last-round')}
              </ButtonLink>
            )}
            <Button onClick={() => setOpen('delete')}>{say('life.delete')}</Button>
          </>
        }
      >
        {say('closing.stack-closed', { closedOn: closedAt })}
      </Banner>
      {open === 'reopen' && (
        <ReopenForm
          name={stack.name}
          onReopen={(name) => bridge().command('stacks.reopen', { id, basedOn, name })}
          onClose={close}
        />
      )}
      {open === 'delete' && <StackEnding stack={stack} ending="delete" onClose={close} />}
    </>
  );
}
