import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Failed, Loading, Screen } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useYard } from '../../stores/yard.ts';
import { useAnswer } from '../../useAnswer.ts';
import { FirstStart } from './FirstStart.tsx';
import { StackCard } from './StackCard.tsx';
import { StackForm } from './StackForm.tsx';
import './stacks.css';

/** What I have, and what is ready. */
export function StacksScreen() {
  const stacks = useAnswer('stacks.list', {});
  const kind = useYard((yard) => yard.info?.kind ?? 'own');
  const [adding, setAdding] = useState(false);
  const isEmpty = stacks.output?.length === 0;
  return (
    <Screen
      title="Stacks"
      lead={stacks.output && !isEmpty ? yardWords(stacks.output) : undefined}
      actions={
        !isEmpty && (
          <>
            <ButtonLink href={hrefOf({ name: 'boards' })}>All boards</ButtonLink>
            <Button onClick={() => setAdding(true)}>Add a stack</Button>
          </>
        )
      }
    >
      {stacks.error && <Failed sentence={stacks.error} again={stacks.again} />}
      {stacks.loading && <Loading />}
      {isEmpty && <FirstStart offerDemo={kind === 'own'} onAddStack={() => setAdding(true)} />}
      <div className="stack-cards">
        {stacks.output?.map((stack) => (
          <StackCard key={stack.id} stack={stack} now={new Date()} />
        ))}
      </div>
      {adding && <StackForm stack={null} onClose={() => setAdding(false)} />}
    </Screen>
  );
}

/** The yard in a sentence: how many boards there are and how many are ready. */
function yardWords(stacks: readonly StackRow[]): string {
  const boards = stacks.reduce((sum, stack) => sum + stack.boards, 0);
  const ready = stacks.reduce((sum, stack) => sum + stack.calls.ready, 0);
  const saved = `${boards === 1 ? '1 board' : `${boards} boards`} in ${stacks.length === 1 ? '1 stack' : `${stacks.length} stacks`}`;
  return `${saved}; ${ready === 0 ? 'none ready yet' : `${ready} ready for use`}.`;
}
