import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ProbeLink } from './ProbeLink.tsx';

/** The stack that needs doing first, with the reason and what to do. */
export function DueBanner({ stack, onMove }: { stack: StackRow; onMove: () => void }) {
  const { say } = useWords();
  const { due, name: stackName } = stack;
  if (due === null) return null;
  const actionName = say('stacks.move-button');
  return (
    <section aria-label={say('stacks.due-first')}>
      <Banner
        kind="caution"
        actions={
          due.kind === 'bring-in' ? (
            <Button
              kind="main"
              aria-label={say('stacks.action-due', { actionName, stackName })}
              onClick={onMove}
            >
              {actionName}
            </Button>
          ) : (
            <ProbeLink stack={stack} isDue />
          )
        }
      >
        <h2 translate="no">{say('stacks.due', { stackName })}</h2>
        <p>{say(due.why)}</p>
      </Banner>
    </section>
  );
}
