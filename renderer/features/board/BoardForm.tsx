import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import { BoardSpecies, BoardThickness, MoreAboutBoard, PlaceInStack, useBoardDraft } from './BoardFields.tsx';

/** Edits a board. Its readings stay; they are judged again. */
export function BoardForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const stacks = useQuery('stacks.list', {});
  const edit = useEdit('boards.edit', board);
  const typed = useBoardDraft(board, edit.theirs);
  const { field, read, refill, set } = typed;
  return (
    <FormDialog
      title={say('board.edit', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={async () => edit.save(read())}
      onClose={onClose}
      conflict={edit.conflict(refill)}
    >
      <div className="form-grid">
        <TextField
          label={say('board.id')}
          maxLength={16}
          {...field('code')}
          onValue={(code) => set({ code: code.toUpperCase() })}
        />
        <Await of={[stacks]}>
          {(all) => (
            <Select
              label={say('board.stack')}
              options={all.map(({ id, name }) => ({ value: id, label: name, isName: true }))}
              {...field('stackId')}
            />
          )}
        </Await>
        <BoardSpecies board={typed} />
        <BoardThickness board={typed} />
      </div>
      <MoreAboutBoard board={typed} />
      <PlaceInStack board={typed} />
    </FormDialog>
  );
}
