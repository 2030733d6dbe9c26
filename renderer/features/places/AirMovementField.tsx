import { type PlaceKind, usualMovement } from '../../../shared-core/contract/yard.ts';
import { type AirMovement, airMovementSchema } from '../../../shared-core/wood/drying/air-movement.ts';
import { Select } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import { movementCaution } from './place-words.ts';

/** How the air moves at the boards: at first as is usual for the kind of place. */
export function AirMovementField({
  kind,
  value,
  saved,
  ...field
}: {
  kind: PlaceKind;
  value: AirMovement | null;
  error: string | null;
  /** What another window saved meanwhile. */
  saved: AirMovement | null | undefined;
  onValue: (movement: AirMovement) => void;
  onBlur: () => void;
}) {
  const { say } = useWords();
  const usual = usualMovement[kind];
  const movement = value ?? usual;
  const caution = movementCaution(movement);
  return (
    <Select
      label={say('places.movement')}
      {...field}
      hint={caution && say(caution)}
      value={movement}
      saved={saved === null ? usual : saved}
      options={airMovementSchema.options.map((each) => ({
        value: each,
        label: say(`places.movement.${each}`),
      }))}
    />
  );
}
