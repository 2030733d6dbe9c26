import { z } from 'zod';
import { nameSchema } from '../../../shared-core/contract/yard.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

const schema = z.object({ name: nameSchema });

/** Brings a closed stack or place back to the lists; under another name, where its own was given to another. */
export function ReopenForm({
  name: ownName,
  onReopen,
  onClose,
}: {
  name: string;
  onReopen: (name: string) => Promise<unknown>;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { field, read } = useDraft(schema, { name: ownName });

  async function save(): Promise<void> {
    const { name } = read();
    await onReopen(name);
    tellDone(say('closing.reopened', { name }));
  }

  return (
    <FormDialog
      title={say('closing.reopen-named', { name: ownName })}
      saveWords={say('closing.reopen')}
      onSave={save}
      onClose={onClose}
    >
      <TextField label={say('closing.name')} hint={say('closing.name-hint')} {...field('name')} />
    </FormDialog>
  );
}
