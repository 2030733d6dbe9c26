import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ReserveForm } from './ReserveForm.tsx';

/** What a board is reserved for, as a link to its project. Nothing where it is not. */
export function ReservedFor({ boardId }: { boardId: number }) {
  const { say } = useWords();
  const project = useQuery('reservations.ofBoard', { boardId }).output;
  if (!project) return null;
  const { name: projectName, neededBy } = project;
  return (
    <>
      {' · '}
      <a href={hrefOf({ name: 'dates' })}>
        {neededBy === null
          ? say('reserve.for', { projectName })
          : say('reserve.for-by', { projectName, neededOn: neededBy })}
      </a>
    </>
  );
}

/** Reserves a board for a project, or for another. */
export function ReserveButton({ boardId }: { boardId: number }) {
  const { say } = useWords();
  const project = useQuery('reservations.ofBoard', { boardId }).output;
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button onClick={() => setOpen(true)}>{say('reserve.action')}</Button>
      {isOpen && (
        <ReserveForm boardIds={[boardId]} projectId={project?.id ?? null} onClose={() => setOpen(false)} />
      )}
    </>
  );
}
