import { useQuery } from '../../data/useQuery.ts';
import { FoundOrNewField, type FoundOrNewProps } from '../../form/FoundOrNewField.tsx';
import { useWords } from '../../words.ts';
import { StackForm } from './StackForm.tsx';

/** A choice of a stack, or of a new one that is added at once. */
export function StackField({ mayAdd = true, ...props }: FoundOrNewProps & { mayAdd?: boolean }) {
  const { say } = useWords();
  return (
    <FoundOrNewField
      {...props}
      found={useQuery('stacks.list', {})}
      words={{ choose: say('stacks.choose-stack'), add: mayAdd ? say('stacks.add-another') : null }}
      addedWith={(then) => <StackForm stack={null} {...then} />}
    />
  );
}
