import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ProbeLink } from './ProbeLink.tsx';
import css from './stacks-screen.module.css';

/** The stack that needs doing first, with the reason and what to do. */
export function DueBanner({ stack, onMove }: { stack: StackRow; onMove: () => void }) {
  const { say } = useWords();
  const { due, name: stackName } = stack;
  if (due === null) return null;
  const actionName = say('stacks.move-button');
  return (
    <section className={css.banner} aria-label={say('stacks.due-first')}>
      <div>
        <h2 translate="no">{say('stacks.due', { stackName })}</h2>
        <p>{say(due.why)}</p>
      </div>
      {due.kind === 'bring-in' ? (
        <Button kind="main" aria-label={say('stacks.action-due', { actionName, stackName })} onClick={onMove}>
          {actionName}
        </Button>
      ) : (
        <ProbeLink stack={stack} isDue />
      )}
    </section>
  );
}
