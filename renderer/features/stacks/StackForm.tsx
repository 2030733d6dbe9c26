import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import { newStackSchema, type StackRow } from '../../../shared-core/contract/yard.ts';
import { topCoverSchema } from '../../../shared-core/wood/drying/faces-of-board.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { wayOn } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import { PlaceField } from '../places/PlaceField.tsx';
import { endUseOptions } from './end-use-options.ts';

const schema = newStackSchema.extend({ placeId: z.int(says('validation.place-missing')) });

interface Props {
  stack: StackRow | null;
  /** What is done with a new one; left out: goes to it. */
  onAdded?: (stack: StackRow) => void;
  onClose: () => void;
}

/** Asks for a stack; for a new one where `stack` is null. */
export function StackForm(props: Props) {
  const places = useQuery('places.list', {});
  const endUses = useQuery('endUses.list', {});
  return (
    <Await of={[places, endUses]}>
      {([place], uses) => <Form {...props} placeId={place?.id ?? null} endUses={uses} />}
    </Await>
  );
}

function Form({
  stack,
  placeId,
  endUses,
  onAdded,
  onClose,
}: Props & {
  /** Where a new one is, at first. */
  placeId: number | null;
  endUses: readonly EndUse[];
}) {
  const { say } = useWords();
  const edit = useEdit('stacks.edit', stack);
  const { field, read, refill } = useDraft(
    schema,
    stack ?? { name: '', placeId, endUseId: endUses[0]?.id ?? '', topCover: 'covered', note: '' },
    edit.theirs,
  );

  async function save(): Promise<void> {
    const made = read();
    if (!stack) {
      const goOn = wayOn();
      const added = await bridge().command('stacks.add', made);
      return onAdded ? onAdded(added) : goOn({ name: 'stack', id: added.id });
    }
    // It changes its place by being moved.
    const { placeId: _, ...changed } = made;
    await edit.save(changed);
  }

  return (
    <FormDialog
      title={stack ? say('stacks.edit-title', { stackName: stack.name }) : say('stacks.add')}
      saveWords={say(stack ? 'common.save' : 'stacks.add-button')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict(refill)}
    >
      <TextField label={say('stacks.name')} hint={say('stacks.name-hint')} {...field('name')} />
      {!stack && <PlaceField label={say('stacks.place')} {...field('placeId')} />}
      <Select
        label={say('stacks.use')}
        hint={say('stacks.use-hint')}
        options={endUseOptions(endUses, say)}
        {...field('endUseId')}
      />
      <Select
        label={say('stacks.top')}
        hint={say('stacks.top-hint')}
        options={topCoverSchema.options.map((value) => ({ value, label: say(`stacks.top.${value}`) }))}
        {...field('topCover')}
      />
      <TextArea label={say('stacks.note')} {...field('note')} />
    </FormDialog>
  );
}
