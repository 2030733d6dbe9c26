import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { conflictOf } from '../../form/VersionTable.tsx';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import { BoardSpecies, BoardThickness, MoreAboutBoard, PlaceInStack, useBoardDraft } from './BoardFields.tsx';
import { boardTexts } from './board-texts.ts';

/** Edits a board. Its readings stay; they are judged again. */
export function BoardForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const words = useWords();
  const { say } = words;
  const allSpecies = useQuery('species.list', {});
  const stacks = useQuery('stacks.list', {});
  const typed = useBoardDraft(board);
  const { draft, field, read, refill, set } = typed;
  const edit = useEdit('boards.edit', board);
  const texts = boardTexts(words, allSpecies.output ?? [], stacks.output ?? []);
  return (
    <FormDialog
      title={say('board.edit', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={async () => edit.save(read())}
      onClose={onClose}
      conflict={conflictOf(edit, texts, refill)}
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
              value={String(draft.stackId)}
              options={all.map(({ id, name }) => ({ value: String(id), label: name, isName: true }))}
              onValue={(stackId) => set({ stackId: Number(stackId) })}
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
