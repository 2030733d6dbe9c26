import { type ProjectOnPage, projectFieldsSchema } from '../../../shared-core/contract/requests/dates.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { DateField } from '../../form/DateField.tsx';
import { TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

/** Asks for a project; for a new one where `project` is null. */
export function ProjectForm({
  project,
  onClose,
}: {
  project: Omit<ProjectOnPage, 'boards'> | null;
  onClose: () => void;
}) {
  const { say } = useWords();
  const edit = useEdit('projects.edit', project);
  const { field, read, refill } = useDraft(
    projectFieldsSchema,
    project ?? { name: '', neededBy: null, note: '' },
    edit.theirs,
  );
  async function save(): Promise<void> {
    const made = read();
    if (project) await edit.save(made);
    else await bridge().command('projects.add', made);
  }
  return (
    <FormDialog
      title={say(project ? 'projects.edit-title' : 'projects.add')}
      saveWords={say(project ? 'common.save' : 'projects.add')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict(refill)}
    >
      <TextField label={say('projects.name')} maxLength={80} {...field('name')} />
      <DateField
        label={say('projects.needed-by')}
        hint={say('projects.needed-by-hint')}
        {...field('neededBy')}
      />
      <TextArea label={say('projects.note')} {...field('note')} />
    </FormDialog>
  );
}
