import { useState } from 'react';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellUndoable } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ProjectForm } from './ProjectForm.tsx';

/** Asks which project boards are reserved for. */
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
  const [chosen, setChosen] = useState<number | null | undefined>(reservedFor ?? undefined);
  const [isAdding, setAdding] = useState(false);
  const boards = boardIds.length;

  return (
    <Await of={[projects]}>
      {(all) => {
        const projectId = chosen === undefined ? (all[0]?.id ?? null) : chosen;
        async function save(): Promise<void> {
          const { act } = await bridge().command('reservations.set', { boardIds: [...boardIds], projectId });
          const project = all.find(({ id }) => id === projectId);
          tellUndoable(
            project
              ? say('reserve.done', { boards, projectName: project.name })
              : say('reserve.freed', { boards }),
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
            <Select
              label={say('reserve.project')}
              value={projectId}
              options={[
                ...all.map(({ id, name }) => ({ value: id, label: name, isName: true })),
                { value: null, label: say('reserve.none') },
              ]}
              onValue={setChosen}
            />
            <Button kind="quiet" onClick={() => setAdding(true)}>
              {say('reserve.new')}
            </Button>
            {isAdding && <ProjectForm project={null} onSaved={setChosen} onClose={() => setAdding(false)} />}
          </FormDialog>
        );
      }}
    </Await>
  );
}
