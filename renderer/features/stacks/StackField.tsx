import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { Select } from '../../form/Field.tsx';
import { Await } from '../../ui/Await.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { StackForm } from './StackForm.tsx';

/** A choice of a stack, or of a new one that is added at once. */
export function StackField({
  label,
  value,
  error,
  butNot,
  mayAdd = true,
  onValue,
  onBlur,
}: {
  label: string;
  /** Null while none is chosen. */
  value: number | null;
  error?: string | null;
  /** The stack that makes no sense here. */
  butNot?: number | undefined;
  mayAdd?: boolean;
  onValue: (stackId: number | null) => void;
  onBlur?: () => void;
}) {
  const { say } = useWords();
  const stacks = useQuery('stacks.list', {});
  const [isAdding, setAdding] = useState(false);
  return (
    <div>
      <Await of={[stacks]}>
        {(all) => (
          <Select
            label={label}
            {...(error !== undefined && { error })}
            value={value}
            options={[
              { value: null, label: say('stacks.choose-stack') },
              ...all
                .filter(({ id }) => id !== butNot)
                .map(({ id, name }) => ({ value: id, label: name, isName: true })),
            ]}
            onValue={onValue}
            onBlur={onBlur}
          />
        )}
      </Await>
      {mayAdd && (
        <Button kind="quiet" onClick={() => setAdding(true)}>
          {say('stacks.add-another')}
        </Button>
      )}
      {isAdding && (
        <StackForm stack={null} onAdded={({ id }) => onValue(id)} onClose={() => setAdding(false)} />
      )}
    </div>
  );
}
