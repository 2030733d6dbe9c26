import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import { MoveForm } from './MoveForm.tsx';

/** A sentence names no more boards than a person reads. */
const MOST_NAMED = 5;

/** Moves the boards of a stack that are due for it, and no other: those to bring in, or those to take back under cover. */
export function MoveDueForm({ stack, onClose }: { stack: StackRow; onClose: () => void }) {
  const { say } = useWords();
  const kind = stack.due?.kind === 'move-back' ? 'move-back' : 'bring-in';
  const dueToMove = useQuery('stacks.dueToMove', { id: stack.id, kind });
  const places = useQuery('places.list', {});
  const some = (codes: readonly string[]) => ({
    someCodes: codes.slice(0, MOST_NAMED),
    more: Math.max(0, codes.length - MOST_NAMED),
  });
  return (
    <Await of={[dueToMove, places]}>
      {({ boards, stay }, places) => (
        <MoveForm
          target={{
            boards,
            placeId: stack.placeId,
            which: [
              say('stacks.moves-boards', some(boards.map(({ code }) => code))),
              ...(stay.length > 0 ? [say('stacks.leaves-boards', some(stay))] : []),
            ].join(' '),
            onMoved: ({ act }, placeId) => {
              const { name: placeName } = places.find(({ id }) => id === placeId)!;
              tellUndoable(say('stacks.boards-moved', { boards: boards.length, placeName }), (work) =>
                bridge().command('acts.undo', { act, work }),
              );
            },
          }}
          onClose={onClose}
        />
      )}
    </Await>
  );
}
