import { useState } from 'react';
import type { StackOnPage } from '../../../shared-core/contract/yard.ts';
import { useQuery } from '../../data/useQuery.ts';
import { go, hrefOf } from '../../stores/navigation.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Menu } from '../../ui/Menu.tsx';
import { EmptyState, Failed, Loading, Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { PlannedHere } from '../dates/PlannedHere.tsx';
import { PlannedMoveForm } from '../dates/PlannedMoveForm.tsx';
import { NoteSheet } from '../notes/NoteSheet.tsx';
import { PicturesSheet } from '../pictures/PicturesSheet.tsx';
import { AddBoardsForm } from './AddBoardsForm.tsx';
import { BoardList } from './BoardList.tsx';
import { ClosedStack } from './ClosedStack.tsx';
import { MoveDueForm } from './MoveDueForm.tsx';
import { MoveForm } from './MoveForm.tsx';
import { NextOfStack } from './NextOfStack.tsx';
import { StackCall } from './StackCall.tsx';
import { StackDrawing } from './StackDrawing.tsx';
import { type Ending, StackEnding } from './StackEnding.tsx';
import { StackForm } from './StackForm.tsx';
import { StackPlan } from './StackPlan.tsx';
import { StackTally } from './StackTally.tsx';
import css from './stack-screen.module.css';

/** One stack and its boards. */
export function StackScreen({ id }: { id: number }) {
  const stack = useQuery('stacks.get', { id });
  const { say } = useWords();
  if (stack.output) return <Stack stack={stack.output} />;
  return (
    <Screen
      title={say('stacks.stack')}
      actions={<ButtonLink href={hrefOf({ name: 'stacks' })}>{say('stacks.go-to-stacks')}</ButtonLink>}
    >
      {stack.error ? <Failed sentence={stack.error} again={stack.again} /> : <Loading />}
    </Screen>
  );
}

function Stack({ stack }: { stack: StackOnPage }) {
  const [open, setOpen] = useState<'nothing' | 'add' | 'move' | 'plan-move' | 'move-due' | 'edit' | Ending>(
    'nothing',
  );
  const { say, formats } = useWords();
  const close = () => setOpen('nothing');
  const add = () => setOpen('add');
  const { id, boards, calls, probed, elsewhere, placeName, endUseName, targetRange } = stack;
  const { lastProbedAt, lastRoundId } = stack;
  const item = (
    name: 'last-round' | 'past-round' | 'labels' | 'move' | 'plan-move' | 'edit',
    onPress: () => void,
  ) => ({
    id: name,
    title: say(`stacks.${name}`),
    onPress,
  });
  const { speciesNames } = stack;
  const species =
    speciesNames.length > 1 ? (
      say('stacks.several-species', { count: speciesNames.length })
    ) : (
      <span translate="no">{formats.named(speciesNames[0] ?? '')}</span>
    );
  const note = (
    <>
      <NoteSheet subject={{ kind: 'stack', id }} title={say('note.of-stack', { stackName: stack.name })} />
      <PicturesSheet subject={{ kind: 'stack', id }} recordName={stack.name} />
    </>
  );
  if (stack.closedAt !== null)
    return (
      <Screen title={stack.name} isName lead={say('stacks.place-and-use', { placeName, endUseName })}>
        <ClosedStack stack={stack} closedAt={stack.closedAt} />
        {note}
      </Screen>
    );
  const facts = { boards, placeName, endUseName, targetRange };
  const lead = [
    lastProbedAt === null
      ? say('stacks.lead', facts)
      : say('stacks.lead-probed', { ...facts, probedOn: lastProbedAt }),
    elsewhere.boards > 0 && say('stacks.elsewhere', { boards: elsewhere.boards }),
  ];
  return (
    <Screen
      title={stack.name}
      isName
      lead={
        <>
          {speciesNames.length > 0 && <>{species} · </>}
          {lead.filter(Boolean).join(' · ')}
          <PlannedHere stackId={id} boardId={null} />
        </>
      }
      actions={
        <>
          {(boards > 0 || stack.due || stack.openRoundId !== null) && (
            <NextOfStack stack={stack} onMove={() => setOpen('move-due')} />
          )}
          <Button onClick={add}>{say('stacks.add-boards')}</Button>
          <Menu
            title={say('stacks.more')}
            items={[
              ...(lastRoundId === null
                ? []
                : [item('last-round', () => go({ name: 'round', id: lastRoundId }))]),
              ...(boards === 0 ? [] : [item('past-round', () => go({ name: 'past-round', stackId: id }))]),
              ...(boards === 0
                ? []
                : [item('labels', () => go({ name: 'labels', boardIds: [], stackId: id }))]),
              ...(boards === 0
                ? []
                : [
                    {
                      id: 'report',
                      title: say('report.print'),
                      onPress: () => go({ name: 'report', kind: 'stack', id }),
                    },
                  ]),
              item('move', () => setOpen('move')),
              ...(boards === 0 ? [] : [item('plan-move', () => setOpen('plan-move'))]),
              item('edit', () => setOpen('edit')),
              // One with boards was not added by mistake.
              ...(['merge', 'close', ...(boards === 0 ? (['delete'] as const) : [])] as const).map(
                (ending) => ({
                  id: ending,
                  title: say(`closing.${ending}-stack`),
                  onPress: () => setOpen(ending),
                }),
              ),
            ]}
          />
        </>
      }
    >
      <div className={boards > 0 ? css.sides : undefined}>
        {boards > 0 && <StackCall stack={stack} />}
        <div className={`column ${css.boards}`}>
          <BoardList
            stackId={id}
            counts={{
              all: boards,
              ...calls,
              'not-probed': boards - probed,
              elsewhere: elsewhere.boards,
            }}
            whenEmpty={(showElsewhere) =>
              elsewhere.boards > 0 ? (
                <EmptyState sentence={say('stacks.all-elsewhere', { boards: elsewhere.boards })}>
                  <Button kind="main" onClick={showElsewhere}>
                    {say('stacks.show-moved')}
                  </Button>
                  <Button onClick={() => setOpen('move')}>{say('stacks.move')}</Button>
                </EmptyState>
              ) : (
                <EmptyState sentence={say('stacks.empty')}>
                  <Button kind="main" onClick={add}>
                    {say('stacks.add-boards')}
                  </Button>
                </EmptyState>
              )
            }
          />
          {boards > 0 && (
            <>
              <StackTally stackId={id} />
              <StackPlan stackId={id} />
            </>
          )}
          {note}
        </div>
        {boards > 0 && <StackDrawing stack={stack} />}
      </div>
      {open === 'add' && <AddBoardsForm stack={stack} onClose={close} />}
      {open === 'move' && <MoveForm target={{ stack }} onClose={close} />}
      {open === 'plan-move' && (
        <PlannedMoveForm of={{ stackId: id, boardId: null, name: stack.name }} onClose={close} />
      )}
      {open === 'move-due' && <MoveDueForm stack={stack} onClose={close} />}
      {open === 'edit' && <StackForm stack={stack} onClose={close} />}
      {(open === 'close' || open === 'merge' || open === 'delete') && (
        <StackEnding
          stack={stack}
          ending={open}
          onOther={setOpen}
          // A dialog that opened another one must not close that.
          onClose={() => setOpen((now) => (now === open ? 'nothing' : now))}
        />
      )}
    </Screen>
  );
}
