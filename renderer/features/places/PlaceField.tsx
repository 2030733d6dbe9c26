import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { Select } from '../../form/Field.tsx';
import { Await } from '../../ui/Await.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { PlaceForm } from './PlaceForm.tsx';

/** A choice of a place, or of a new one that is added at once. */
export function PlaceField({
  label,
  value,
  error,
  butNot,
  onValue,
  onBlur,
}: {
  label: string;
  /** Null while none is chosen. */
  value: number | null;
  error?: string | null;
  /** The place that makes no sense here. */
  butNot?: number | undefined;
  onValue: (placeId: number | null) => void;
  onBlur?: () => void;
}) {
  const { say } = useWords();
  const places = useQuery('places.list', {});
  const [isAdding, setAdding] = useState(false);
  return (
    <div>
      <Await of={[places]}>
        {(all) => (
          <Select
            label={label}
            {...(error !== undefined && { error })}
            value={value}
            options={[
              { value: null, label: say('stacks.choose-place') },
              ...all
                .filter(({ id }) => id !== butNot)
                .map(({ id, name }) => ({ value: id, label: name, isName: true })),
            ]}
            onValue={onValue}
            onBlur={onBlur}
          />
        )}
      </Await>
      <Button kind="quiet" onClick={() => setAdding(true)}>
        {say('stacks.add-place')}
      </Button>
      {isAdding && (
        <PlaceForm place={null} onSaved={({ id }) => onValue(id)} onClose={() => setAdding(false)} />
      )}
    </div>
  );
}
