import { type ComponentProps, type ReactNode, useState } from 'react';
import { type Leaving, leavingSchema } from '../../../shared-core/contract/archive.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { Menu } from '../../ui/Menu.tsx';
import { useWords } from '../../words.ts';
import { PutInStackForm } from '../stacks/PutInStackForm.tsx';
import { CutForm } from './CutForm.tsx';
import { DeleteBoardsDialog } from './DeleteBoardsDialog.tsx';
import { LeaveForm } from './LeaveForm.tsx';
import { MergeBoardForm } from './MergeBoardForm.tsx';
import { WhyNotDeleted } from './WhyNotDeleted.tsx';

type Asked = Leaving | 'put-in-stack' | 'cut' | 'merge' | 'delete';

const isLeaving = (asked: Asked | null): asked is Leaving => leavingSchema.safeParse(asked).success;

/** What else can become of boards, behind one button. */
export function LifeMenu({
  boards,
  canDelete,
  items = [],
  onLeft,
  onDeleted,
}: {
  boards: readonly BoardRow[];
  /** Where it is known that none has a reading, or not known. */
  canDelete: boolean;
  /** What else, before these. */
  items?: ComponentProps<typeof Menu>['items'];
  /** They are somewhere else now. */
  onLeft?: () => void;
  onDeleted: () => void;
}): ReactNode {
  const { say } = useWords();
  const [asking, setAsking] = useState<Asked | null>(null);
  const [only] = boards;
  const isOne = boards.length === 1 && only;
  const close = () => setAsking(null);
  const item = (id: Asked) => ({
    id,
    title: say(`life.${id}`),
    onPress: () => setAsking(id),
  });
  return (
    <>
      <Menu
        title={say('life.more')}
        items={[
          ...items,
          item('put-in-stack'),
          ...(isOne ? [item('cut'), item('merge')] : []),
          ...leavingSchema.options.map(item),
          item('delete'),
        ]}
      />
      {asking === 'delete' && (canDelete || !isOne) && (
        <DeleteBoardsDialog boards={boards} onDeleted={onDeleted} onClose={close} />
      )}
      {asking === 'delete' && !canDelete && isOne && (
        <WhyNotDeleted board={isOne} onChoose={setAsking} onClose={close} />
      )}
      {asking === 'put-in-stack' && (
        <PutInStackForm boards={boards} {...(onLeft && { onPut: onLeft })} onClose={close} />
      )}
      {asking === 'cut' && isOne && (
        <CutForm board={isOne} {...(onLeft && { onCut: onLeft })} onClose={close} />
      )}
      {asking === 'merge' && isOne && <MergeBoardForm board={isOne} onClose={close} />}
      {isLeaving(asking) && (
        <LeaveForm boards={boards} why={asking} {...(onLeft && { onLeft })} onClose={close} />
      )}
    </>
  );
}
