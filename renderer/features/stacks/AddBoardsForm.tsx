import { useState } from 'react';
import { MOST_AT_ONCE } from '../../../shared-core/contract/first-stack.ts';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { NumberField, TextField } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { Failed, Loading } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import {
  MoreAboutBoard,
  newBoardDraft,
  PlaceInStack,
  SpeciesAndThickness,
  useBoardDraft,
} from '../board/BoardFields.tsx';
import { codesFrom, manyBoards } from './many-boards.ts';
import { StackOrderFields, useStackOrder } from './StackOrderFields.tsx';

/** Asks for one board, or for many alike whose IDs are numbered on. */
export function AddBoardsForm({ stack, onClose }: { stack: StackRow; onClose: () => void }) {
  const allSpecies = useQuery('species.list', {});
  const next = useQuery('boards.nextCode', { stackId: stack.id });
  // The species added last is the likeliest to be added again. What lies folded below is never taken from another board.
  const newest = useQuery('boards.list', {
    stackId: stack.id,
    search: '',
    offset: Math.max(0, stack.boards - 1),
    limit: 1,
  });
  const nextLayer = useQuery('stacks.nextLayer', { id: stack.id });
  const error = allSpecies.error ?? next.error ?? nextLayer.error;
  if (error) return <Failed sentence={error} />;
  if (!allSpecies.output || !next.output || !nextLayer.output || newest.loading) return <Loading />;
  return (
    <Form
      stack={stack}
      allSpecies={allSpecies.output}
      nextLayer={nextLayer.output.layer}
      code={next.output.code}
      speciesId={newest.output?.rows[0]?.speciesId ?? ''}
      onClose={onClose}
    />
  );
}

function Form({
  stack,
  allSpecies,
  nextLayer,
  code,
  speciesId,
  onClose,
}: {
  stack: StackRow;
  allSpecies: readonly Species[];
  /** The layer above what is there. */
  nextLayer: number;
  code: string;
  speciesId: string;
  onClose: () => void;
}) {
  const { say } = useWords();
  const typed = useBoardDraft(newBoardDraft({ code, stackId: stack.id, speciesId }));
  const { draft, field, read, set } = typed;
  const [count, setCount] = useState<number | null>(1);
  const [shown, setShown] = useState(false);
  const codes = codesFrom(draft.code, count);
  const isMany = codes !== null && codes.length > 1;
  const order = useStackOrder(codes?.length ?? 1, nextLayer, true);

  async function save(): Promise<void> {
    setShown(true);
    order.show();
    const board = read();
    if (codes === null) throw fieldsMarked();
    const made = await bridge().command('boards.add', manyBoards(board, codes, isMany ? order.read() : null));
    tellDone(say('stacks.boards-added', { boards: made.length, boardCode: codes[0]! }));
  }

  return (
    <FormDialog
      title={say('stacks.add-boards-to', { stackName: stack.name })}
      saveWords={say('stacks.add-so-many', { boards: isMany ? codes.length : 1 })}
      onSave={save}
      onClose={onClose}
    >
      <div className="form-grid">
        <TextField
          label={say(isMany ? 'stacks.first-id' : 'board.id')}
          hint={
            isMany
              ? say('stacks.id-range', { firstCode: codes[0]!, lastCode: codes.at(-1)! })
              : say('stacks.id-hint')
          }
          maxLength={16}
          {...field('code')}
          onValue={(first) => set({ code: first.toUpperCase() })}
        />
        <NumberField
          label={say('stacks.how-many')}
          hint={say('stacks.how-many-hint')}
          value={count}
          error={shown && codes === null ? say('board.number-outside', { most: MOST_AT_ONCE }) : null}
          onValue={setCount}
        />
      </div>
      <SpeciesAndThickness board={typed} allSpecies={allSpecies} />
      {isMany && <StackOrderFields order={order} blankHint={say('stacks.per-layer-optional')} />}
      <details>
        <summary>{say('stacks.more-fields')}</summary>
        <div className="form-dialog">
          <MoreAboutBoard board={typed} />
          {codes?.length === 1 && <PlaceInStack board={typed} />}
        </div>
      </details>
    </FormDialog>
  );
}
