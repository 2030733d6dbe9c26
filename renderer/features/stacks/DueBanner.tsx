import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';
import { NextOfStack } from './NextOfStack.tsx';

/** The stack that needs doing first, with the reason and what to do. */
export function DueBanner({ stack, onMove }: { stack: StackRow; onMove: () => void }) {
  const { say } = useWords();
  const { due, name: stackName } = stack;
  if (due === null) return null;
  return (
    <section aria-label={say('stacks.due-first')}>
      <Banner kind="caution" actions={<NextOfStack stack={stack} isDue onMove={onMove} />}>
        <h2 translate="no">{say('stacks.due', { stackName })}</h2>
        <p>{say(due.why)}</p>
      </Banner>
    </section>
  );
}
