import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useEach, useQuery } from '../../data/useQuery.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { StackField } from './StackField.tsx';
import { StackOrderFields, useStackOrder } from './StackOrderFields.tsx';
import { useCarried } from './useCarried.tsx';

const schema = z.object({ stackId: z.int(says('validation.stack-missing')) });

/** Puts boards in another stack: where they lie there, and whether they were carried to its place. */
export function PutInStackForm({
  boards,
  onPut,
  onClose,
}: {
  /** In the order in which they are laid. */
  boards: readonly Pick<BoardRow, 'id' | 'code' | 'version' | 'placeId' | 'stackId'>[];
  onPut?: () => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { draft, field, read } = useDraft(schema, { stackId: null });
  const stacks = useQuery('stacks.list', {}).output ?? [];
  const stack = stacks.find(({ id }) => id === draft.stackId);
  const coming = boards.filter(({ stackId }) => stackId !== draft.stackId);
  const isElsewhere = stack !== undefined && coming.some(({ placeId }) => placeId !== stack.placeId);
  const carried = useCarried(
    isElsewhere ? { id: stack.placeId, name: stack.placeName } : null,
    coming.length,
  );
  const { underWay, follow, cancel } = useLongWork();
  const [first] = boards;
  const inOne = boards.every(({ stackId }) => stackId === first?.stackId) ? first?.stackId : undefined;
  const nextLayer = useNextLayer(draft.stackId);
  const order = useStackOrder(coming.length, nextLayer, true);

  async function save(): Promise<void> {
    order.show();
    const { stackId } = read();
    const edit = {
      boards: coming.map(({ id, version }) => ({ id, basedOn: version })),
      changed: {},
      stackId,
      stackOrder: coming.length > 1 ? order.read() : null,
    };
    if (coming.length > 0) {
      await carried.ask((move) =>
        follow((work) => bridge().command('boards.editTogether', { ...edit, move, work })),
      );
      onPut?.();
      tellDone(say('stacks.boards-put', { boards: coming.length, stackName: stack?.name ?? '' }));
    }
  }

  return (
    <FormDialog
      title={
        boards.length === 1 && first
          ? say('stacks.put-board', { boardCode: first.code })
          : say('stacks.put-boards', { boards: boards.length })
      }
      saveWords={carried.saveWords ?? say('stacks.put-button')}
      isQuestion={carried.isAsking}
      onSave={save}
      onClose={onClose}
      work={{ label: say('stacks.changing-boards'), underWay, onCancel: cancel }}
    >
      <StackField label={say('board.stack')} butNot={inOne} {...field('stackId')} />
      {carried.fields}
      {stack && coming.length > 1 && (
        <StackOrderFields order={order} blankHint={say('stacks.put-order-blank')} />
      )}
      {stack && coming.length === 1 && <p className="soft">{say('stacks.put-order-one')}</p>}
    </FormDialog>
  );
}

/** The layer above what is there; 1 while no stack is chosen. */
function useNextLayer(stackId: number | null): number {
  const [next] = useEach('stacks.nextLayer', stackId === null ? [] : [{ id: stackId }]);
  return next?.output?.layer ?? 1;
}
