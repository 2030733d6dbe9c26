import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import type { NamedBoard } from './LeaveForm.tsx';

/** Asks before boards that were entered by mistake go. */
export function DeleteBoardsDialog({
  boards,
  onDeleted,
  onClose,
}: {
  boards: readonly NamedBoard[];
  onDeleted: () => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { underWay, follow, cancel } = useLongWork();
  const count = boards.length;
  const [only] = boards;
  const isOne = count === 1 && only;

  async function remove(): Promise<void> {
    const boardIds = boards.map(({ id }) => id);
    await follow((work) => bridge().command('boards.delete', { boardIds, work }));
    onDeleted();
    tellDone(
      isOne
        ? say('life.board-deleted', { boardCode: only.code })
        : say('life.boards-deleted', { boards: count }),
    );
  }

  return (
    <FormDialog
      title={
        isOne
          ? say('life.delete-board', { boardCode: only.code })
          : say('life.delete-boards', { boards: count })
      }
      saveWords={say('life.delete')}
      onSave={remove}
      onClose={onClose}
      work={{ label: say('life.deleting-boards'), underWay, onCancel: cancel }}
    >
      <p>{say('life.delete-effect')}</p>
    </FormDialog>
  );
}
