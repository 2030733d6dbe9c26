import { type ReactNode, useState } from 'react';
import type { Asked } from '../data/useQuery.ts';
import { Await } from '../ui/Await.tsx';
import { Button } from '../ui/Button.tsx';
import { Select } from './Field.tsx';

/** The props of a choice of a stack or of a place. */
export interface FoundOrNewProps {
  label: string;
  /** Null while none is chosen. */
  value: number | null;
  error?: string | null;
  /** The one that makes no sense here. */
  butNot?: number | undefined;
  onValue: (id: number | null) => void;
  onBlur?: () => void;
}

/**
 * A choice of a record by its name, or of a new one that is added at once.
 *
 * @param words      what stands while none is chosen, and on the button that adds one; null where none may be added
 * @param addedWith  the form that adds one
 */
export function FoundOrNewField({
  found,
  words,
  addedWith,
  label,
  value,
  error,
  butNot,
  onValue,
  onBlur,
}: FoundOrNewProps & {
  found: Asked<readonly { id: number; name: string }[]>;
  words: { choose: string; add: string | null };
  addedWith: (then: { onAdded: (added: { id: number }) => void; onClose: () => void }) => ReactNode;
}) {
  const [isAdding, setAdding] = useState(false);
  return (
    <div>
      <Await of={[found]}>
        {(all) => (
          <Select
            label={label}
            {...(error !== undefined && { error })}
            value={value}
            options={[
              { value: null, label: words.choose },
              ...all
                .filter(({ id }) => id !== butNot)
                .map(({ id, name }) => ({ value: id, label: name, isName: true })),
            ]}
            onValue={onValue}
            onBlur={onBlur}
          />
        )}
      </Await>
      {words.add !== null && (
        <Button kind="quiet" onClick={() => setAdding(true)}>
          {words.add}
        </Button>
      )}
      {isAdding && addedWith({ onAdded: ({ id }) => onValue(id), onClose: () => setAdding(false) })}
    </div>
  );
}
