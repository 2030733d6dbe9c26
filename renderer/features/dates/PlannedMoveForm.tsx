import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import {
  type DateOfYard,
  type PlannedMove,
  plannedMoveFieldsSchema,
} from '../../../shared-core/contract/requests/dates.ts';
import type { BoardRow, StackRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { Select, TextArea } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { BoardField } from '../board/BoardField.tsx';
import { PlaceField } from '../places/PlaceField.tsx';

/** What is to be moved: a stack, or one board. */
export type ToMove = Pick<PlannedMove, 'stackId' | 'boardId'> & { name: string };

/** Asks for a move that is to be made. */
export function PlannedMoveForm({
  planned = null,
  of = null,
  onClose,
}: {
  /** The one that is edited; null for a new one. */
  planned?: (DateOfYard & { kind: 'move' }) | null;
  /** Of a new one, what is to be moved; null where that is asked. */
  of?: ToMove | null;
  onClose: () => void;
}) {
  const stacks = useQuery('stacks.list', {});
  return <Await of={[stacks]}>{(all) => <Form {...{ planned, of, onClose }} stacks={all} />}</Await>;
}

function Form({
  planned,
  of,
  stacks,
  onClose,
}: {
  planned: (DateOfYard & { kind: 'move' }) | null;
  of: ToMove | null;
  stacks: readonly StackRow[];
  onClose: () => void;
}) {
  const { say } = useWords();
  const edit = useEdit('plannedMoves.edit', planned?.move ?? null);
  /** Null: one board. */
  const [stackId, setStackId] = useState<number | null>(stacks[0]?.id ?? null);
  const [board, setBoard] = useState<BoardRow | null>(null);
  const { draft, field, read, refill, set } = useDraft(
    plannedMoveFieldsSchema,
    planned?.move ?? { placeId: null, plannedOn: dayOf(new Date()), note: '' },
    edit.theirs,
  );
  const stack = stacks.find(({ id }) => id === stackId);
  const chosen: ToMove | null =
    of ??
    (stack
      ? { stackId: stack.id, boardId: null, name: stack.name }
      : board && { stackId: null, boardId: board.id, name: board.code });

  async function save(): Promise<void> {
    const fields = read();
    if (planned) return void (await edit.save(fields));
    if (chosen === null) throw new Refusal(message('dates.what-missing'));
    const { name, ...what } = chosen;
    await bridge().command('plannedMoves.add', { ...fields, ...what });
    const places = await bridge().query('places.list', {});
    const place = places.find(({ id }) => id === fields.placeId);
    tellDone(say('dates.move-planned', { name, placeName: place?.name ?? '' }));
  }

  return (
    <FormDialog
      title={
        planned
          ? say('dates.edit-move-title', { name: planned.name })
          : of
            ? say('dates.plan-move-of', { name: of.name })
            : say('dates.plan-move-title')
      }
      saveWords={say(planned ? 'common.save' : 'dates.plan-move')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict(refill)}
    >
      {planned === null && of === null && (
        <>
          <Select
            label={say('dates.move-what')}
            value={stackId}
            options={[
              ...stacks.map(({ id, name }) => ({ value: id, label: name, isName: true })),
              { value: null, label: say('dates.move-one-board') },
            ]}
            onValue={setStackId}
          />
          {stackId === null && (
            <BoardField label={say('dates.move-board')} value={board} onValue={setBoard} />
          )}
        </>
      )}
      <PlaceField label={say('stacks.move-to')} {...field('placeId')} />
      <DateField
        label={say('dates.move-day')}
        {...field('plannedOn')}
        value={draft.plannedOn || null}
        onValue={(day) => set({ plannedOn: day ?? '' })}
      />
      <TextArea label={say('dates.move-note')} {...field('note')} />
    </FormDialog>
  );
}
