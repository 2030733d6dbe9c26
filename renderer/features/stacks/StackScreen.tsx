import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Failed, Loading, Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { AddBoardsForm } from './AddBoardsForm.tsx';
import { BoardList } from './BoardList.tsx';
import { CallCounts } from './CallCounts.tsx';
import { MoveForm } from './MoveForm.tsx';
import { ProbeLink } from './StackCard.tsx';
import { StackForm } from './StackForm.tsx';
import { StackOverview } from './StackOverview.tsx';
import { StackVolume } from './StackVolume.tsx';
import './stacks.css';

/** One stack and its boards. */
export function StackScreen({ id }: { id: number }) {
  const stacks = useQuery('stacks.list', {});
  const { say } = useWords();
  const stack = stacks.output?.find((each) => each.id === id);
  if (stack) return <Stack stack={stack} />;
  return (
    <Screen title={say('stacks.stack')}>
      {stacks.error && <Failed sentence={stacks.error} again={stacks.again} />}
      {stacks.loading && <Loading />}
      {stacks.output && (
        <EmptyState sentence={say('stacks.stack-not-found')}>
          <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
            {say('stacks.go-to-stacks')}
          </ButtonLink>
        </EmptyState>
      )}
    </Screen>
  );
}

function Stack({ stack }: { stack: StackRow }) {
  const [open, setOpen] = useState<'nothing' | 'add' | 'move' | 'edit'>('nothing');
  const { say } = useWords();
  const close = () => setOpen('nothing');
  const add = () => setOpen('add');
  const { placeName, endUseName } = stack;
  const hasBoards = stack.boards > 0;
  return (
    <Screen
      title={stack.name}
      isName
      lead={say('stacks.place-and-use', { placeName, endUseName })}
      actions={
        <>
          {hasBoards && <ProbeLink stack={stack} />}
          <Button onClick={add}>{say('stacks.add-boards')}</Button>
          {hasBoards && (
            <ButtonLink href={hrefOf({ name: 'labels', boardIds: [], stackId: stack.id })}>
              {say('stacks.labels')}
            </ButtonLink>
          )}
          <Button onClick={() => setOpen('move')}>{say('stacks.move')}</Button>
          <Button onClick={() => setOpen('edit')}>{say('stacks.edit')}</Button>
        </>
      }
    >
      {hasBoards && (
        <div className="stack-summary">
          <CallCounts calls={stack.calls} boards={stack.boards} probed={stack.probed} />
          {stack.note && (
            <p className="stack-note" translate="no">
              {stack.note}
            </p>
          )}
        </div>
      )}
      {hasBoards && <StackOverview stack={stack} />}
      <BoardList
        stackId={stack.id}
        whenEmpty={
          <EmptyState sentence={say('stacks.empty')}>
            <Button kind="main" onClick={add}>
              {say('stacks.add-boards')}
            </Button>
          </EmptyState>
        }
      />
      {hasBoards && <StackVolume stackId={stack.id} />}
      {open === 'add' && <AddBoardsForm stack={stack} onClose={close} />}
      {open === 'move' && <MoveForm target={{ stack }} onClose={close} />}
      {open === 'edit' && <StackForm stack={stack} onClose={close} />}
    </Screen>
  );
}
