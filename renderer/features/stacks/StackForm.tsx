import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { PlaceRow, StackRow } from '../../../shared-core/contract/yard.ts';
import { type TopCover, topCoverSchema } from '../../../shared-core/wood/drying/faces-of-board.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { conflictOf, type FieldTexts } from '../../form/VersionTable.tsx';
import { go } from '../../stores/navigation.ts';
import { Failed, Loading } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { PlaceField } from '../places/PlaceField.tsx';
import { endUseOptions } from './end-use-options.ts';

/** Asks for a stack; for a new one where `stack` is null, and then goes to it. */
export function StackForm({ stack, onClose }: { stack: StackRow | null; onClose: () => void }) {
  const places = useQuery('places.list', {});
  const endUses = useQuery('endUses.list', {});
  const error = places.error ?? endUses.error;
  if (error) return <Failed sentence={error} />;
  if (!places.output || !endUses.output) return <Loading />;
  return <Form stack={stack} places={places.output} endUses={endUses.output} onClose={onClose} />;
}

function Form({
  stack,
  places,
  endUses,
  onClose,
}: {
  stack: StackRow | null;
  places: readonly PlaceRow[];
  endUses: readonly EndUse[];
  onClose: () => void;
}) {
  const [name, setName] = useState(stack?.name ?? '');
  // Where there is a stack there is a place.
  const [placeId, setPlaceId] = useState(places[0]?.id ?? null);
  const [endUseId, setEndUseId] = useState(stack?.endUseId ?? endUses[0]?.id ?? '');
  const [topCover, setTopCover] = useState<TopCover>(stack?.topCover ?? 'covered');
  const [note, setNote] = useState(stack?.note ?? '');
  const [shown, setShown] = useState(false);
  const { say } = useWords();

  const edit = useEdit('stacks.edit', stack);

  function fill(record: StackRow): void {
    setName(record.name);
    setEndUseId(record.endUseId);
    setTopCover(record.topCover);
    setNote(record.note);
  }

  const fields: FieldTexts<'stacks.edit'> = {
    name: { label: say('stacks.name'), text: (value) => value },
    endUseId: {
      label: say('stacks.use'),
      text: (value) => endUses.find(({ id }) => id === value)?.name ?? value,
    },
    topCover: { label: say('stacks.top'), text: (value) => say(`stacks.top.${value}`) },
    note: { label: say('stacks.note'), text: (value) => value },
  };

  async function save(): Promise<void> {
    setShown(true);
    if (name.trim() === '') throw new Refusal(message('validation.name-missing'));
    if (stack) {
      await edit.save({ name: name.trim(), endUseId, topCover, note });
      return;
    }
    if (placeId === null) throw new Refusal(message('validation.place-missing'));
    const made = await bridge().command('stacks.add', {
      name,
      placeId,
      endUseId,
      topCover,
      note,
    });
    go({ name: 'stack', id: made.id });
  }

  return (
    <FormDialog
      title={stack ? say('stacks.edit-title', { stackName: stack.name }) : say('stacks.add')}
      saveWords={say(stack ? 'common.save' : 'stacks.add-button')}
      onSave={save}
      onClose={onClose}
      conflict={conflictOf(edit, fields, fill)}
    >
      <TextField
        label={say('stacks.name')}
        hint={say('stacks.name-hint')}
        value={name}
        error={shown && name.trim() === '' ? say('validation.name-missing') : null}
        onValue={setName}
      />
      {!stack && (
        <PlaceField
          label={say('stacks.place')}
          value={placeId}
          error={shown && placeId === null ? say('validation.place-missing') : null}
          onValue={setPlaceId}
        />
      )}
      <Select
        label={say('stacks.use')}
        hint={say('stacks.use-hint')}
        value={endUseId}
        options={endUseOptions(endUses, say)}
        onValue={setEndUseId}
      />
      <Select
        label={say('stacks.top')}
        hint={say('stacks.top-hint')}
        value={topCover}
        options={topCoverSchema.options.map((value) => ({ value, label: say(`stacks.top.${value}`) }))}
        onValue={setTopCover}
      />
      <TextArea label={say('stacks.note')} value={note} onValue={setNote} />
    </FormDialog>
  );
}
