import { useState } from 'react';
import { Button, type ButtonKind } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { PlaceForm } from './PlaceForm.tsx';

/** Where no place of the yard is dry enough: adds one. A heated room is what gets wood driest, so the form begins with it. */
export function AddDrierPlace({ kind, 'aria-label': label }: { kind: ButtonKind; 'aria-label'?: string }) {
  const { say } = useWords();
  const [isAdding, setAdding] = useState(false);
  return (
    <>
      <Button kind={kind} aria-label={label} onClick={() => setAdding(true)}>
        {say('stacks.add-drier-place')}
      </Button>
      {isAdding && (
        <PlaceForm
          place={null}
          kind="heated-room"
          onSaved={() => undefined}
          onClose={() => setAdding(false)}
        />
      )}
    </>
  );
}
