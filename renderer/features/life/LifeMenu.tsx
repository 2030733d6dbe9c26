import { type ReactNode, useState } from 'react';
import { type Leaving, leavingSchema } from '../../../shared-core/contract/archive.ts';
import { Menu } from '../../ui/Menu.tsx';
import { useWords } from '../../words.ts';
import { DeleteBoardsDialog } from './DeleteBoardsDialog.tsx';
import { LeaveForm, type NamedBoard } from './LeaveForm.tsx';

/** What else can become of boards, behind one button. */
export function LifeMenu({
  boards,
  canDelete,
  onLeft,
  onDeleted,
}: {
  boards: readonly NamedBoard[];
  /** Where it is known that none has a reading, or not known. */
  canDelete: boolean;
  onLeft?: () => void;
  onDeleted: () => void;
}): ReactNode {
  const { say } = useWords();
  const [asking, setAsking] = useState<Leaving | 'delete' | null>(null);
  const close = () => setAsking(null);
  const item = (id: Leaving | 'delete') => ({
    id,
    title: say(`life.${id}`),
    onPress: () => setAsking(id),
  });
  return (
    <>
      <Menu
        title={say('life.more')}
        items={[...leavingSchema.options.map(item), ...(canDelete ? [item('delete')] : [])]}
      />
      {asking === 'delete' && <DeleteBoardsDialog boards={boards} onDeleted={onDeleted} onClose={close} />}
      {asking !== null && asking !== 'delete' && (
        <LeaveForm boards={boards} why={asking} {...(onLeft && { onLeft })} onClose={close} />
      )}
    </>
  );
}
