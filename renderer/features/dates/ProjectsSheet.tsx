import { useState } from 'react';
import type { ProjectOnPage } from '../../../shared-core/contract/requests/dates.ts';
import { bridge } from '../../data/bridge.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { attempt, tellUndoable } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { EmptyState, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import css from './dates.module.css';
import { ProjectForm } from './ProjectForm.tsx';

const undo = (act: string) => (work: string) => bridge().command('acts.undo', { act, work });

/** Projects with the boards reserved for them: which will make it, and where. */
export function ProjectsSheet({ projects }: { projects: readonly ProjectOnPage[] }) {
  const { say } = useWords();
  const [isAdding, setAdding] = useState(false);
  return (
    <Sheet
      title={say('projects.title')}
      actions={<Button onClick={() => setAdding(true)}>{say('projects.add')}</Button>}
    >
      {projects.length === 0 ? (
        <EmptyState sentence={say('projects.none')} />
      ) : (
        projects.map((project) => <Project key={project.id} project={project} />)
      )}
      {isAdding && <ProjectForm project={null} onClose={() => setAdding(false)} />}
    </Sheet>
  );
}

function Project({ project }: { project: ProjectOnPage }) {
  const { say } = useWords();
  const [isEditing, setEditing] = useState(false);
  const { id, version, name: projectName, neededBy, note, boards } = project;
  const count = (which: ProjectOnPage['boards'][number]['makesIt']) =>
    boards.filter(({ makesIt }) => makesIt === which).length;

  async function remove(): Promise<void> {
    const removed = await attempt(bridge().command('projects.delete', { id, basedOn: version }));
    if (removed) tellUndoable(say('projects.deleted', { projectName }), undo(removed.act));
  }
  async function release(boardId: number, boardCode: string): Promise<void> {
    const freed = await attempt(
      bridge().command('reservations.set', { boardIds: [boardId], projectId: null }),
    );
    if (freed) tellUndoable(say('projects.released', { boardCode }), undo(freed.act));
  }
  return (
    <section className={css.project} aria-label={projectName}>
      <header>
        <h3 translate="no">{projectName}</h3>
        <p>
          {neededBy === null ? say('projects.no-day') : say('projects.needed-on', { neededOn: neededBy })}{' '}
          {say('projects.counts', {
            boards: boards.length,
            inTime: count('yes'),
            ifMoved: count('if-moved'),
            late: count('no'),
            unknown: count(null),
          })}
        </p>
        {note !== '' && <p className="soft">{note}</p>}
        {boards.length === 0 && <p className="soft">{say('projects.reserve-hint')}</p>}
        <Actions>
          <Button aria-label={say('projects.edit-of', { projectName })} onClick={() => setEditing(true)}>
            {say('common.edit')}
          </Button>
          <Button aria-label={say('projects.delete-of', { projectName })} onClick={() => void remove()}>
            {say('dates.delete')}
          </Button>
        </Actions>
      </header>
      {boards.length > 0 && (
        <DataTable
          name={projectName}
          columnsName="project"
          rows={boards}
          keyOf={({ boardId }) => boardId}
          hrefOf={({ boardId }) => hrefOf({ name: 'board', id: boardId })}
          columns={[
            {
              id: 'board',
              head: say('projects.board'),
              cell: ({ code }) => <span translate="no">{code}</span>,
              sortBy: ({ code }) => code,
              widthRem: 8,
            },
            {
              id: 'in-time',
              head: say('projects.in-time'),
              cell: ({ makesIt }) => <strong>{say(`projects.in-time.${makesIt ?? 'unknown'}`)}</strong>,
              sortBy: ({ makesIt }) => makesIt,
              widthRem: 8,
            },
            { id: 'why', head: say('projects.why'), cell: ({ why }) => say(why), widthRem: 26 },
            {
              id: 'place',
              head: say('projects.place'),
              cell: ({ placeName }) => <span translate="no">{placeName}</span>,
              below: ({ stackName }) => <span translate="no">{stackName}</span>,
              sortBy: ({ placeName }) => placeName,
              optional: true,
              widthRem: 12,
            },
            {
              id: 'release',
              head: say('projects.release'),
              headSpokenOnly: true,
              cell: ({ boardId, code: boardCode }) => (
                <Button
                  aria-label={say('projects.release-of', { boardCode })}
                  onClick={() => void release(boardId, boardCode)}
                >
                  {say('projects.release')}
                </Button>
              ),
              widthRem: 8,
            },
          ]}
        />
      )}
      {isEditing && <ProjectForm project={project} onClose={() => setEditing(false)} />}
    </section>
  );
}
