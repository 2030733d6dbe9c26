import { useRef, useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { byUrgency } from '../../../shared-core/probing/plan/by-urgency.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { dropUnsaved, hasUnsaved } from '../../stores/unsaved-forms.ts';
import { useYard } from '../../stores/yard.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Failed, Loading, Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { ClosedStacks } from './ClosedStacks.tsx';
import { DueBanner } from './DueBanner.tsx';
import { FIRST_STACK, FirstStart } from './FirstStart.tsx';
import { MoveDueForm } from './MoveDueForm.tsx';
import { readyFacts } from './ready-words.ts';
import { StackCard } from './StackCard.tsx';
import { StackForm } from './StackForm.tsx';
import css from './stacks-screen.module.css';

/** What I have, what is ready, and what to do first. */
export function StacksScreen() {
  const stacks = useQuery('stacks.list', {});
  const kind = useYard((yard) => yard.info?.kind ?? 'own');
  const [adding, setAdding] = useState(false);
  const [moved, setMoved] = useState<StackRow | null>(null);
  const words = useWords();
  const { say } = words;
  const [typed, setTyped] = useState(() => hasUnsaved(FIRST_STACK));
  const isEmpty = stacks.output?.length === 0;
  function discard(): void {
    dropUnsaved(FIRST_STACK);
    setTyped(false);
  }
  const { sorted, first } = useOrder(stacks.output ?? []);
  return (
    <Screen
      title={say(isEmpty ? 'stacks.start-title' : 'stacks.title')}
      lead={stacks.output && (isEmpty ? say('stacks.start-lead') : yardWords(stacks.output, words))}
      actions={
        !isEmpty && (
          <>
            <ButtonLink href={hrefOf({ name: 'boards' })}>{say('stacks.all-boards')}</ButtonLink>
            <ButtonLink href={hrefOf({ name: 'history' })}>{say('act.title')}</ButtonLink>
            <Button onClick={() => setAdding(true)}>{say('stacks.add')}</Button>
          </>
        )
      }
    >
      {stacks.error && <Failed sentence={stacks.error} again={stacks.again} />}
      {stacks.loading && <Loading />}
      {/* What was typed stays where another window adds a stack meanwhile. */}
      {!isEmpty && typed && (
        <Banner actions={<Button onClick={discard}>{say('stacks.discard-typed')}</Button>}>
          {say('stacks.added-meanwhile')}
        </Banner>
      )}
      {(isEmpty || typed) && (
        <FirstStart offerDemo={isEmpty && kind === 'own'} onTyped={() => setTyped(true)} />
      )}
      {first && <DueBanner stack={first} onMove={() => setMoved(first)} />}
      <div className={css.cards}>
        {sorted.map((stack) => (
          <StackCard key={stack.id} stack={stack} isFirst={stack === first} onMove={() => setMoved(stack)} />
        ))}
      </div>
      <ClosedStacks />
      {adding && <StackForm stack={null} onClose={() => setAdding(false)} />}
      {moved && <MoveDueForm stack={moved} onClose={() => setMoved(null)} />}
    </Screen>
  );
}

/** How many boards there are, how many are ready, and when the next is likely ready. */
function yardWords(stacks: readonly StackRow[], words: Words): string {
  const { say, formats } = words;
  const sum = (of: (stack: StackRow) => number) => stacks.reduce((total, stack) => total + of(stack), 0);
  const today = formats.localDay(new Date());
  const [next] = stacks
    .flatMap(({ nextReady }) => (nextReady && nextReady.when.likely > today ? nextReady : []))
    .sort((a, b) => a.when.likely.localeCompare(b.when.likely));
  const counts = say('stacks.yard', {
    boards: sum(({ boards, elsewhere }) => boards + elsewhere.boards),
    ready: sum(({ calls, elsewhere }) => calls.ready + elsewhere.ready),
    more: sum(({ shouldBeReady }) => shouldBeReady),
  });
  if (isForecasting(stacks)) return `${counts} ${say('stacks.forecasting')}`;
  return next ? `${counts} ${say('stacks.next-ready', readyFacts(next, words))}` : counts;
}

const isForecasting = (stacks: readonly StackRow[]) => stacks.some((stack) => stack.isForecasting);

/** What needs doing first comes first. While forecasts are made, stacks stay where they were, under the pointer. */
function useOrder(stacks: readonly StackRow[]): { sorted: StackRow[]; first: StackRow | undefined } {
  const held = useRef<readonly number[]>([]);
  const rankOf = ({ id }: StackRow) => held.current.indexOf(id) + 1 || stacks.length + 1;
  const isHeld = isForecasting(stacks);
  const sorted = isHeld ? stacks.toSorted((a, b) => rankOf(a) - rankOf(b)) : byUrgency(stacks);
  if (!isHeld) held.current = sorted.map(({ id }) => id);
  return { sorted, first: held.current.length > 0 ? sorted[0] : undefined };
}
