import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useYard } from '../../stores/yard.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Failed, Loading, Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { FirstStart } from './FirstStart.tsx';
import { StackCard } from './StackCard.tsx';
import { StackForm } from './StackForm.tsx';
import './stacks.css';

/** What I have, and what is ready. */
export function StacksScreen() {
  const stacks = useQuery('stacks.list', {});
  const kind = useYard((yard) => yard.info?.kind ?? 'own');
  const [adding, setAdding] = useState(false);
  const { say } = useWords();
  const isEmpty = stacks.output?.length === 0;
  return (
    <Screen
      title={say(isEmpty ? 'stacks.start-title' : 'stacks.title')}
      lead={stacks.output && (isEmpty ? say('stacks.start-lead') : yardWords(stacks.output, say))}
      actions={
        !isEmpty && (
          <>
            <ButtonLink href={hrefOf({ name: 'boards' })}>{say('stacks.all-boards')}</ButtonLink>
            <Button onClick={() => setAdding(true)}>{say('stacks.add')}</Button>
          </>
        )
      }
    >
      {stacks.error && <Failed sentence={stacks.error} again={stacks.again} />}
      {stacks.loading && <Loading />}
      {isEmpty && <FirstStart offerDemo={kind === 'own'} />}
      <div className="stack-cards">
        {stacks.output?.map((stack) => (
          <StackCard key={stack.id} stack={stack} />
        ))}
      </div>
      {adding && <StackForm stack={null} onClose={() => setAdding(false)} />}
    </Screen>
  );
}

/** The yard in a sentence: how many boards there are and how many are ready. */
function yardWords(stacks: readonly StackRow[], say: Say): string {
  const boards = stacks.reduce((sum, stack) => sum + stack.boards, 0);
  const ready = stacks.reduce((sum, stack) => sum + stack.calls.ready, 0);
  const counts = { boards, stacks: stacks.length };
  return ready === 0 ? say('stacks.yard-none-ready', counts) : say('stacks.yard-ready', { ...counts, ready });
}
