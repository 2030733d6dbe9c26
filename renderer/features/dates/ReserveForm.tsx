import { useState } from 'react';
import { projectFieldsSchema } from '../../../shared-core/contract/requests/dates.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { Select, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';

/** A project that is there, one that is added, or none. */
type Chosen = number | 'new' | null;

/** Asks which project boards are reserved for; a new one is added with them. */
export function ReserveForm({
  boardIds,
  projectId: reservedFor,
  onClose,
}: {
  boardIds: readonly number[];
  /** What they are reserved for now; null for nothing. */
  projectId: number | null;
  onClose: () => void;
}) {
  const { say } = useWords();
  const projects = useQuery('projects.list', {});
  const [picked, setPicked] = useState<Chosen | undefined>(reservedFor ?? undefined);
  const added = useDraft(projectFieldsSchema, { name: '', neededBy: null, note: '' });
  const boards = boardIds.length;

  return (
    <Await of={[projects]}>
      {(all) => {
        const chosen: Chosen = picked === undefined ? (all[0]?.id ?? 'new') : picked;
        async function save(): Promise<void> {
          const newProject = chosen === 'new' ? added.read() : null;
          const projectId = chosen === 'new' ? null : chosen;
          const { act } = await bridge().command('reservations.set', {
            boardIds: [...boardIds],
            projectId,
            newProject,
          });
          const projectName = newProject?.name ?? all.find(({ id }) => id === projectId)?.name;
          tellUndoable(
            projectName === undefined
              ? say('reserve.freed', { boards })
              : say('reserve.done', { boards, projectName }),
            (work) => bridge().command('acts.undo', { act, work }),
          );
        }
        return (
          <FormDialog
            title={say('reserve.title', { boards })}
            saveWords={say('reserve.action')}
            onSave={save}
            onClose={onClose}
          >
            <Select<Chosen>
              label={say('reserve.project')}
              value={chosen}
              options={[
                ...all.map(({ id, name }) => ({ value: id, label: name, isName: true })),
                { value: 'new', label: say('reserve.new') },
                { value: null, label: say('reserve.none') },
              ]}
              onValue={setPicked}
            />
            {chosen === 'new' && (
              <>
                <TextField label={say('projects.name')} maxLength={80} {...added.field('name')} />
                <DateField
                  label={say('projects.needed-by')}
                  hint={say('projects.needed-by-hint')}
                  {...added.field('neededBy')}
                />
              </>
            )}
          </FormDialog>
        );
      }}
    </Await>
  );
}
