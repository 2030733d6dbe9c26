import { useQuery } from '../../data/useQuery.ts';
import { FoundOrNewField, type FoundOrNewProps } from '../../form/FoundOrNewField.tsx';
import { useWords } from '../../words.ts';
import { PlaceForm } from './PlaceForm.tsx';

/** A choice of a place, or of a new one that is added at once. */
export function PlaceField(props: FoundOrNewProps) {
  const { say } = useWords();
  return (
    <FoundOrNewField
      {...props}
      found={useQuery('places.list', {})}
      words={{ choose: say('stacks.choose-place'), add: say('stacks.add-place') }}
      addedWith={({ onAdded, onClose }) => <PlaceForm place={null} onSaved={onAdded} onClose={onClose} />}
    />
  );
}
