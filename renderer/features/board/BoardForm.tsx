import { useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextField } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { conflictOf } from '../../form/VersionTable.tsx';
import { useUnits } from '../../stores/settings.ts';
import { Failed, Loading } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { MoreAboutBoard, PlaceInStack, SpeciesAndThickness } from './BoardFields.tsx';
import { boardProblems, changedBoard, draftOfBoard } from './board-draft.ts';
import { boardTexts } from './board-texts.ts';

/** Edits a board. Its readings stay; they are judged again. */
export function BoardForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const units = useUnits();
  const words = useWords();
  const { say } = words;
  const allSpecies = useQuery('species.list', {});
  const stacks = useQuery('stacks.list', {});
  const [draft, setDraft] = useState(draftOfBoard(board, units));
  const [stackId, setStackId] = useState(String(board.stackId));
  const [shown, setShown] = useState(false);
  const problems = boardProblems(draft, units);
  const fields = { draft, problems: shown ? problems : {}, units, onDraft: setDraft };
  const error = allSpecies.error ?? stacks.error;

  const edit = useEdit('boards.edit', board);
  const texts = boardTexts(words, allSpecies.output ?? [], stacks.output ?? []);

  function fill(saved: BoardRow): void {
    setDraft(draftOfBoard(saved, units));
    setStackId(String(saved.stackId));
  }

  async function save(): Promise<void> {
    setShown(true);
    if (Object.keys(problems).length > 0) throw fieldsMarked();
    const { id: _, ...made } = changedBoard(edit.base ?? board, draft, units);
    await edit.save({ ...made, stackId: Number(stackId) });
  }

  return (
    <FormDialog
      title={say('board.edit', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
      conflict={conflictOf(edit, texts, fill)}
    >
      {error && <Failed sentence={error} />}
      <div className="form-grid">
        <TextField
          label={say('board.id')}
          maxLength={16}
          value={draft.code}
          error={shown && problems.code ? say(problems.code) : null}
          onValue={(code) => setDraft({ ...draft, code: code.toUpperCase() })}
        />
        {stacks.output && (
          <Select
            label={say('board.stack')}
            value={stackId}
            options={stacks.output.map((stack) => ({
              value: String(stack.id),
              label: stack.name,
              isName: true,
            }))}
            onValue={setStackId}
          />
        )}
      </div>
      {allSpecies.output ? (
        <SpeciesAndThickness {...fields} allSpecies={allSpecies.output} />
      ) : (
        !error && <Loading />
      )}
      <MoreAboutBoard {...fields} />
      <PlaceInStack {...fields} />
    </FormDialog>
  );
}
