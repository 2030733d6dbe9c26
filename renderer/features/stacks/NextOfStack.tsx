import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { AddDrierPlace } from '../places/AddDrierPlace.tsx';

/** Whether what it is due for first is a move. */
const isDueToMove = ({ due }: StackRow): boolean => due?.kind === 'move-back' || due?.kind === 'bring-in';

/** Whether boards of it are to be moved to a place that is there. */
const isToMove = (stack: StackRow): boolean =>
  isDueToMove(stack) || stack.calls['bring-in'] > stack.withoutPlace;

/** What to do with a stack next, the most urgent first: probe it, move it where boards need that, or add a place for them. */
export function NextOfStack({
  stack,
  isDue = false,
  onMove,
}: {
  stack: StackRow;
  /** Only what it is due for, beside the reason: read aloud, that differs from the buttons of the stack's card. */
  isDue?: boolean;
  onMove: () => void;
}) {
  const { say } = useWords();
  const { id: stackId, name: stackName, openRoundId, due } = stack;
  const isMoveFirst = isDueToMove(stack);
  const isPlaceFirst = due?.kind === 'add-place';
  const named = (actionName: string) => ({
    'aria-label': say(isDue ? 'stacks.action-due' : 'stacks.action-of-stack', { actionName, stackName }),
    children: actionName,
  });
  const move = isToMove(stack) && (
    <Button kind={isMoveFirst ? 'main' : 'plain'} onClick={onMove} {...named(say('stacks.move-button'))} />
  );
  const probe = (
    <ButtonLink
      kind={due && !isMoveFirst && !isPlaceFirst ? 'main' : 'plain'}
      href={hrefOf(
        openRoundId === null
          ? { name: 'round-start', stackId, placeId: due?.placeId ?? null }
          : { name: 'round', id: openRoundId },
      )}
      {...named(say(openRoundId === null ? 'stacks.probe' : 'stacks.resume'))}
    />
  );
  const addPlace = (isPlaceFirst || stack.withoutPlace > 0) && (
    <AddDrierPlace
      kind={isPlaceFirst ? 'main' : 'plain'}
      aria-label={named(say('stacks.add-drier-place'))['aria-label']}
    />
  );
  if (isDue) return isMoveFirst ? move : isPlaceFirst ? addPlace : probe;
  return (
    <>
      {isMoveFirst && move}
      {isPlaceFirst && addPlace}
      {probe}
      {!isMoveFirst && move}
      {!isPlaceFirst && addPlace}
    </>
  );
}
