import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { EmptyState, Failed, Loading, Screen } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useAnswer } from '../../useAnswer.ts';
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
  const stacks = useAnswer('stacks.list', {});
  const stack = stacks.output?.find((each) => each.id === id);
  if (stack) return <Stack stack={stack} />;
  return (
    <Screen title="Stack">
      {stacks.error && <Failed sentence={stacks.error} again={stacks.again} />}
      {stacks.loading && <Loading />}
      {stacks.output && (
        <EmptyState sentence="There is no such stack in this yard.">
          <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
            Go to the stacks
          </ButtonLink>
        </EmptyState>
      )}
    </Screen>
  );
}

function Stack({ stack }: { stack: StackRow }) {
  const [open, setOpen] = useState<'nothing' | 'add' | 'move' | 'change'>('nothing');
  const close = () => setOpen('nothing');
  const add = () => setOpen('add');
  return (
    <Screen
      title={stack.name}
      lead={`${stack.placeName} · for ${stack.endUseName}`}
      actions={
        <>
          {stack.boards > 0 && <ProbeLink stack={stack} />}
          <Button onClick={add}>Add boards</Button>
          {stack.boards > 0 && (
            <ButtonLink href={hrefOf({ name: 'labels', boardIds: [], stackId: stack.id })}>Labels</ButtonLink>
          )}
          <Button onClick={() => setOpen('move')}>Move the stack</Button>
          <Button onClick={() => setOpen('change')}>Change</Button>
        </>
      }
    >
      {stack.boards > 0 && (
        <div className="stack-standing">
          <CallCounts calls={stack.calls} boards={stack.boards} probed={stack.probed} />
          {stack.note && <p className="stack-note">{stack.note}</p>}
        </div>
      )}
      {stack.boards > 0 && <StackOverview stack={stack} />}
      <BoardList
        stackId={stack.id}
        whenEmpty={
          <EmptyState sentence="No boards in this stack yet. Add them with their wood and thickness; their IDs are numbered for you.">
            <Button kind="main" onClick={add}>
              Add boards
            </Button>
          </EmptyState>
        }
      />
      {stack.boards > 0 && <StackVolume stackId={stack.id} />}
      {open === 'add' && <AddBoardsForm stack={stack} onClose={close} />}
      {open === 'move' && <MoveForm what={stack.name} target={{ stackId: stack.id }} onClose={close} />}
      {open === 'change' && <StackForm stack={stack} onClose={close} />}
    </Screen>
  );
}
