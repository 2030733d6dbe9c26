import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** Starts a round over the stack, or resumes the one that is open. */
export function ProbeLink({
  stack: { id: stackId, openRoundId, name: stackName, due },
  isDue = false,
}: {
  stack: Pick<StackRow, 'id' | 'name' | 'openRoundId' | 'due'>;
  /** Whether it stands beside the reason why it is due: read aloud, it differs from that of the stack's card. */
  isDue?: boolean;
}) {
  const { say } = useWords();
  const actionName = say(openRoundId === null ? 'stacks.probe' : 'stacks.resume');
  return (
    <ButtonLink
      kind={due && due.kind !== 'bring-in' ? 'main' : 'plain'}
      href={hrefOf(
        openRoundId === null ? { name: 'round-start', stackId } : { name: 'round', id: openRoundId },
      )}
      aria-label={say(isDue ? 'stacks.action-due' : 'stacks.action-of-stack', { actionName, stackName })}
    >
      {actionName}
    </ButtonLink>
  );
}
