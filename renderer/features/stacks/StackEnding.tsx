import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { bridge } from '../../data/bridge.ts';
import { go } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';
import { ConfirmDialog } from '../closing/ConfirmDialog.tsx';
import { MergeStackForm } from './MergeStackForm.tsx';

export type Ending = 'close' | 'merge' | 'delete';

/** How a stack leaves the lists: closed, merged into another, or deleted where it was added by mistake. */
export function StackEnding({
  stack,
  ending,
  onOther,
  onClose,
}: {
  stack: StackRow;
  ending: Ending;
  /** Opens another dialog, where this act is refused. A closed stack has no other. */
  onOther?: (ending: Ending) => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { id, version: basedOn, name: stackName, openRoundId } = stack;
  const insteadTo = (other: 'close' | 'merge', after: Code) =>
    onOther && { after, words: say(`closing.${other}-stack`), onDo: async () => onOther(other) };
  const toRound =
    openRoundId === null
      ? undefined
      : {
          after: 'refusal.stack-round-open' as const,
          words: say('round-start.resume'),
          onDo: async () => go({ name: 'round', id: openRoundId }),
        };
  switch (ending) {
    case 'merge':
      return <MergeStackForm stack={stack} onClose={onClose} />;
    case 'close':
      return (
        <ConfirmDialog
          key={ending}
          title={say('closing.close-named', { name: stackName })}
          effect={say('closing.close-stack-effect')}
          doWords={say('closing.close-stack')}
          doneWords={say('closing.closed', { name: stackName })}
          onDo={() => bridge().command('stacks.close', { id, basedOn })}
          instead={[insteadTo('merge', 'refusal.stack-has-boards'), toRound]}
          onClose={onClose}
        />
      );
    case 'delete':
      return (
        <ConfirmDialog
          key={ending}
          title={say('closing.delete-named', { name: stackName })}
          effect={say('closing.delete-stack-effect')}
          doWords={say('life.delete')}
          doneWords={say('closing.deleted', { name: stackName })}
          onDo={async () => {
            await bridge().command('stacks.delete', { id, basedOn });
            go({ name: 'stacks' });
          }}
          instead={[insteadTo('close', 'refusal.stack-has-records')]}
          onClose={onClose}
        />
      );
  }
}
