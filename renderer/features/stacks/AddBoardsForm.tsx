import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { firstStackSchema, MOST_AT_ONCE } from '../../../shared-core/contract/first-stack.ts';
import { codesFrom, manyBoards } from '../../../shared-core/contract/many-boards.ts';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { NumberField, TextField } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { Await } from '../../ui/Await.tsx';
import { Button } from '../../ui/Button.tsx';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import {
  BoardSawnOn,
  BoardSpecies,
  BoardThickness,
  MoreAboutBoard,
  newBoardDraft,
  PlaceInStack,
  useBoardDraft,
} from '../board/BoardFields.tsx';
import { sizedBoards, type TypedSizes } from './board-sizes.ts';
import { SizesGrid } from './SizesGrid.tsx';
import { StackOrderFields, useStackOrder } from './StackOrderFields.tsx';
import { useHereSince } from './useHereSince.tsx';

const countSchema = firstStackSchema.pick({ boards: true });

/** A board that a notebook names and the yard does not have. */
interface NamedBoard {
  code: string;
  onAdded: (ids: number[]) => void;
}

/** Asks for one board, or for many alike whose IDs are numbered on. */
export function AddBoardsForm({
  stack,
  named,
  onClose,
}: {
  stack: StackRow;
  /** One of the stack's other boards. */
  named?: NamedBoard;
  onClose: () => void;
}) {
  const next = useQuery('boards.nextCode', { stackId: stack.id });
  // Fields in sight begin as they are on the board added last. Those folded away are never taken from another board.
  const newest = useQuery('boards.list', {
    stackId: stack.id,
    search: '',
    offset: Math.max(0, stack.boards - 1),
    limit: 1,
  });
  const nextLayer = useQuery('stacks.nextLayer', { id: stack.id });
  const here = useQuery('stacks.hereSince', { id: stack.id });
  return (
    <Await of={[next, newest, nextLayer, here]}>
      {({ code }, { rows: [last] }, { layer }, { since }) => (
        <Form
          stack={stack}
          start={{
            ...newBoardDraft({
              code: named?.code ?? code,
              stackId: stack.id,
              speciesId: last?.speciesId ?? '',
            }),
            ...(last && {
              thicknessMm: last.thicknessMm,
              thicknessQuarters: last.thicknessQuarters,
              sawnOn: last.sawnOn,
            }),
          }}
          nextLayer={layer}
          stackOn={since === null ? null : dayOf(new Date(since))}
          onAdded={named?.onAdded}
          onClose={onClose}
        />
      )}
    </Await>
  );
}

function Form({
  stack,
  start,
  nextLayer,
  stackOn,
  onAdded,
  onClose,
}: {
  stack: StackRow;
  start: ReturnType<typeof newBoardDraft>;
  /** The layer above what is there. */
  nextLayer: number;
  /** The local day since when what is there is there. */
  stackOn: string | null;
  onAdded: ((ids: number[]) => void) | undefined;
  onClose: () => void;
}) {
  const { say } = useWords();
  const units = useUnits();
  const [sizes, setSizes] = useState<TypedSizes | null>(null);
  const [areRight, setRight] = useState(false);
  const typed = useBoardDraft(start);
  const { draft, field, read, set } = typed;
  const many = useDraft(countSchema, { boards: 1 });
  const isTooMany = (boards: number | null) => (boards ?? 0) > MOST_AT_ONCE;
  const most = isTooMany(many.draft.boards) ? MOST_AT_ONCE : 1;
  const boards = many.made?.boards ?? most;
  const sized = sizes && sizedBoards(sizes, draft.code, boards, units);
  const codes = sized?.map(({ code }) => code) ?? codesFrom(draft.code, boards);
  const howMany = many.field('boards');
  const isMany = codes.length > 1;
  const hereSince = useHereSince({
    boards: codes.length,
    sawnOn: draft.sawnOn,
    enteredOn: dayOf(new Date()),
    stackOn,
  });
  const order = useStackOrder(codes.length, nextLayer, true);

  async function save(): Promise<void> {
    many.show();
    order.show();
    const board = read();
    many.read();
    if (sized?.some(({ problems }) => problems.some((problem) => problem !== null))) throw fieldsMarked();
    const unusual = sized?.filter(({ questions }) => questions.some((question) => question !== null)) ?? [];
    if (unusual.length > 0 && !areRight)
      throw new Refusal(message('stacks.sizes-unusual', { boards: unusual.length }));
    const hereSinceOn = hereSince.read();
    const alike = manyBoards(board, codes, isMany ? order.read() : null);
    const made = await bridge().command(
      'boards.add',
      alike.map((each, row) => ({
        ...each,
        hereSinceOn,
        widthMm: sized?.[row]?.widthMm ?? each.widthMm,
        lengthMm: sized?.[row]?.lengthMm ?? each.lengthMm,
      })),
    );
    onAdded?.(made.map(({ id }) => id));
    tellDone(say('stacks.boards-added', { boards: made.length, boardCode: codes[0]! }));
  }

  return (
    <FormDialog
      title={say('stacks.add-boards-to', { stackName: stack.name })}
      saveWords={most > 1 ? say('stacks.add-boards') : say('stacks.add-so-many', { boards: codes.length })}
      onSave={save}
      onClose={onClose}
    >
      <div className="form-grid">
        <TextField
          label={say(isMany ? 'stacks.first-id' : 'board.id')}
          hint={
            isMany
              ? sized
                ? undefined
                : say('stacks.id-range', { firstCode: codes[0]!, lastCode: codes.at(-1)! })
              : say('stacks.id-hint')
          }
          maxLength={16}
          {...field('code')}
          onValue={(first) => set({ code: first.toUpperCase() })}
        />
        <NumberField
          label={say('stacks.how-many')}
          hint={sized ? undefined : say('stacks.how-many-hint')}
          {...howMany}
          onValue={(boards) => {
            howMany.onValue(boards);
            // Typing on makes it no smaller.
            if (isTooMany(boards)) many.show();
          }}
        />
        <BoardSpecies board={typed} />
        <BoardThickness board={typed} />
        <BoardSawnOn board={typed} />
      </div>
      {hereSince.part}
      {isMany &&
        (sized ? (
          <SizesGrid
            boards={sized}
            typed={sizes}
            areRight={areRight}
            onRight={setRight}
            onTyped={(typed, count) => {
              setSizes(typed);
              setRight(false);
              many.set({ boards: count });
            }}
          />
        ) : (
          <div>
            <Button onClick={() => setSizes([])}>{say('stacks.type-sizes')}</Button>
          </div>
        ))}
      {isMany && <StackOrderFields order={order} blankHint={say('stacks.per-layer-optional')} />}
      <details>
        <summary>{say('stacks.more-fields')}</summary>
        <div className="column">
          <MoreAboutBoard board={typed} hasSawnOn={false} />
          {!isMany && <PlaceInStack board={typed} />}
        </div>
      </details>
    </FormDialog>
  );
}
