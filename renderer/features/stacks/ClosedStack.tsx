import { useState } from 'react';
import type { StackOnPage } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ReopenForm } from '../closing/ReopenForm.tsx';
import { StackEnding } from './StackEnding.tsx';

/** On the page of a stack that left the lists: since when, where its boards are, and the way back. */
export function ClosedStack({ stack, closedAt }: { stack: StackOnPage; closedAt: string }) {
  const { say } = useWords();
  const [open, setOpen] = useState<'reopen' | 'delete' | null>(null);
  const close = () => setOpen(null);
  const { id, version: basedOn } = stack;
  const { hasArchived = false, mergedInto = null } = stack.closed ?? {};
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
        {mergedInto && (
          <>
            {' '}
            {say('closing.merged-into')}{' '}
            <a href={hrefOf({ name: 'stack', id: mergedInto.id })} translate="no">
              {mergedInto.name}
            </a>
            {'.'}
          </>
        )}{' '}
        {hasArchived && say('closing.find-archived')}
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
