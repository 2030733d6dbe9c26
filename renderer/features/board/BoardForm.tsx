import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { BoardRow, Move } from '../../../shared-core/contract/yard.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useQuestions } from '../../form/useQuestions.ts';
import { tellDone } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { useHereSince } from '../stacks/useHereSince.tsx';
import { BoardSpecies, BoardThickness, MoreAboutBoard, PlaceInStack, useBoardDraft } from './BoardFields.tsx';

type Answers = Pick<RequestInput<'boards.edit'>['changed'], 'isBeforeSawing'>;
/** The question with which a sawing date is refused, and what saving again answers. */
const asking = { 'refusal.sawn-after-move': { isBeforeSawing: true } } as const;

/** The local day since when a board is where it was entered, where no person gave it; null where one did. */
function enteredOn(moves: readonly Move[]): string | null {
  const [first, moved] = moves;
  return first?.datedBy === 'clock' && !moved ? dayOf(new Date(first.since)) : null;
}

/** Edits a board. Its readings stay; they are judged again. */
export function BoardForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const stacks = useQuery('stacks.list', {});
  const edit = useEdit('boards.edit', board);
  const typed = useBoardDraft(board, edit.theirs);
  const { draft, field, read, refill, set } = typed;
  const { moves = [] } = useQuery('boards.get', { id: board.id }).output ?? {};
  const hereSince = useHereSince({
    boards: 1,
    sawnOn: draft.sawnOn === edit.base?.sawnOn ? null : draft.sawnOn,
    enteredOn: enteredOn(moves),
  });
  const questions = useQuestions<Answers, keyof typeof asking>(asking, { sawnOn: draft.sawnOn });

  async function save(): Promise<void> {
    const board = read();
    const hereSinceOn = hereSince.read();
    const since = hereSinceOn !== null && { hereSinceOn };
    const saved = await questions.ask((answers) => edit.save({ ...board, ...since, ...answers }));
    if (saved && saved !== edit.base) tellDone(say('board.edited', { boardCode: saved.code }));
  }

  return (
    <FormDialog
      title={say('board.edit', { boardCode: board.code })}
      saveWords={say(questions.open === null ? 'common.save' : 'life.was-log')}
      isQuestion={questions.open !== null}
      onSave={save}
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
      <MoreAboutBoard board={typed} sinceSawn={hereSince.part} />
      <PlaceInStack board={typed} />
    </FormDialog>
  );
}
