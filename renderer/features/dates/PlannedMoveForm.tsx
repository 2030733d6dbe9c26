import { useState } from 'react';
import { z } from 'zod';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type DateOfYard, plannedMoveFieldsSchema } from '../../../shared-core/contract/requests/dates.ts';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { Select, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { Await } from '../../ui/Await.tsx';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { PlaceField } from '../places/PlaceField.tsx';

/** Asks for a move that is to be made; for a new one where `planned` is null. */
export function PlannedMoveForm({
  planned,
  onClose,
}: {
  planned: (DateOfYard & { kind: 'move' }) | null;
  onClose: () => void;
}) {
  const stacks = useQuery('stacks.list', {});
  return <Await of={[stacks]}>{(all) => <Form {...{ planned, onClose }} stacks={all} />}</Await>;
}

/** The day it is planned for, and where to. */
const schema = plannedMoveFieldsSchema.extend({ boardCode: z.string() });

function Form({
  planned,
  stacks,
  onClose,
}: {
  planned: (DateOfYard & { kind: 'move' }) | null;
  stacks: readonly StackRow[];
  onClose: () => void;
}) {
  const { say } = useWords();
  const edit = useEdit('plannedMoves.edit', planned?.move ?? null);
  /** Null: one board. */
  const [stackId, setStackId] = useState<number | null>(stacks[0]?.id ?? null);
  const { draft, field, read, refill, set } = useDraft(
    schema,
    {
      placeId: null,
      plannedOn: dayOf(new Date()),
      note: '',
      ...planned?.move,
      boardCode: '',
    },
    edit.theirs && { ...edit.theirs, boardCode: '' },
  );

  async function boardIdOf(boardCode: string): Promise<number> {
    const search = boardCode.trim();
    const { rows } = await bridge().query('boards.list', { stackId: null, search, offset: 0, limit: 50 });
    const board = rows.find(({ code }) => code.toLowerCase() === search.toLowerCase());
    if (!board) throw new Refusal(message('dates.move-no-board', { boardCode: search }));
    return board.id;
  }
  async function save(): Promise<void> {
    const { boardCode, ...fields } = read();
    if (planned) return void (await edit.save(fields));
    const boardId = stackId === null ? await boardIdOf(boardCode) : null;
    await bridge().command('plannedMoves.add', { ...fields, stackId, boardId });
  }

  return (
    <FormDialog
      title={planned ? say('dates.edit-move-title', { name: planned.name }) : say('dates.plan-move-title')}
      saveWords={say(planned ? 'common.save' : 'dates.plan-move')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict((theirs) => refill({ ...theirs, boardCode: '' }))}
    >
      {planned === null && (
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
          {stackId === null && <TextField label={say('dates.move-board-code')} {...field('boardCode')} />}
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
