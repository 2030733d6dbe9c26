import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { Wood } from '../../../shared-core/wood/wood.ts';
import { bridge } from '../../bridge.ts';
import { NumberField, TextField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { Failed, Loading } from '../../parts/Screen.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { useAnswer } from '../../useAnswer.ts';
import { MoreAboutBoard, PlaceInStack, WoodAndThickness } from '../board/BoardFields.tsx';
import { type BoardDraft, boardProblems, emptyBoardDraft } from '../board/board-draft.ts';
import { codesFrom, MOST_AT_ONCE, manyBoards } from './many-boards.ts';
import { PileFields } from './PileFields.tsx';
import { emptyPileDraft, pileOrderOf, pileWords } from './pile-draft.ts';

/** Asks for one board, or for many alike whose IDs are numbered on. */
export function AddBoardsForm({ stack, onClose }: { stack: StackRow; onClose: () => void }) {
  const woods = useAnswer('woods.list', {});
  const next = useAnswer('boards.nextCode', { stackId: stack.id });
  // What was added last is the likeliest to be added again.
  const newest = useAnswer('boards.list', {
    stackId: stack.id,
    search: '',
    offset: Math.max(0, stack.boards - 1),
    limit: 1,
  });
  const nextCourse = useAnswer('stacks.nextCourse', { id: stack.id });
  const error = woods.error ?? next.error ?? nextCourse.error;
  if (error) return <Failed sentence={error} />;
  if (!woods.output || !next.output || !nextCourse.output || newest.loading)
    return <Loading what="the woods" />;
  const last = newest.output?.rows[0];
  return (
    <Form
      stack={stack}
      woods={woods.output}
      nextCourse={nextCourse.output.course}
      start={{
        ...emptyBoardDraft,
        code: next.output.code,
        woodId: last?.woodId ?? '',
        log: last?.log ?? '',
        sawnOn: last?.sawnOn ?? '',
      }}
      onClose={onClose}
    />
  );
}

function Form({
  stack,
  woods,
  nextCourse,
  start,
  onClose,
}: {
  stack: StackRow;
  woods: readonly Wood[];
  /** The course above what is there. */
  nextCourse: number;
  start: BoardDraft;
  onClose: () => void;
}) {
  const units = useUnits();
  const [draft, setDraft] = useState(start);
  const [count, setCount] = useState<number | null>(1);
  const [pileDraft, setPileDraft] = useState(emptyPileDraft);
  const [shown, setShown] = useState(false);
  const problems = boardProblems(draft, units);
  const codes = codesFrom(draft.code, count);
  const isMany = codes !== null && codes.length > 1;
  const laid = isMany ? pileOrderOf(pileDraft, codes.length, nextCourse) : { pile: null };
  const fields = { draft, problems: shown ? problems : {}, units, onDraft: setDraft };

  async function save(): Promise<void> {
    setShown(true);
    if (Object.keys(problems).length > 0 || codes === null || 'problem' in laid) throw fieldsMarked();
    const made = await bridge().call('boards.add', manyBoards(draft, codes, stack.id, units, laid.pile));
    tellDone(made.length === 1 ? `Board ${made[0]?.code} is added.` : `${made.length} boards are added.`);
  }

  return (
    <FormDialog
      title={`Add boards to ${stack.name}`}
      saveWords={isMany ? `Add ${codes.length} boards` : 'Add the board'}
      onSave={save}
      onClose={onClose}
    >
      <div className="form-grid">
        <TextField
          label={isMany ? 'First ID' : 'ID'}
          hint={
            isMany ? `${codes[0]} to ${codes.at(-1)}.` : 'Short enough to say aloud and to write on the end.'
          }
          maxLength={16}
          value={draft.code}
          error={shown ? problems.code : null}
          onValue={(code) => setDraft({ ...draft, code: code.toUpperCase() })}
        />
        <NumberField
          label="How many"
          hint="All alike; change single ones afterwards."
          value={count}
          error={shown && codes === null ? `A whole number from 1 to ${MOST_AT_ONCE}.` : null}
          onValue={setCount}
        />
      </div>
      <WoodAndThickness {...fields} woods={woods} />
      {isMany && (
        <PileFields
          draft={pileDraft}
          firstCourse={nextCourse}
          hint={
            'pile' in laid && laid.pile
              ? pileWords(laid.pile, codes.length)
              : 'As the stack is laid. Left empty, nobody knows where in the pile each lies.'
          }
          error={shown && 'problem' in laid ? laid.problem : null}
          onDraft={setPileDraft}
        />
      )}
      <details>
        <summary>More about {isMany ? 'them' : 'it'}</summary>
        <div className="form-dialog">
          <MoreAboutBoard {...fields} />
          {codes?.length === 1 && <PlaceInStack {...fields} />}
        </div>
      </details>
    </FormDialog>
  );
}
