import { NumberField } from './Field.tsx';

/** Whether a mass was typed that a body can have. */
export const isMass = (mass: number | null): mass is number => mass !== null && mass > 0;

/** A mass that must be typed. */
export function MassField({
  label,
  unit,
  mass,
  shown,
  onMass,
  autoFocus,
}: {
  label: string;
  unit: string;
  mass: number | null;
  /** Whether to mark what is wrong: from the first try to save. */
  shown: boolean;
  onMass: (mass: number | null) => void;
  autoFocus?: boolean;
}) {
  return (
    <NumberField
      label={label}
      unit={unit}
      autoFocus={autoFocus}
      value={mass}
      error={shown && !isMass(mass) ? `Type a mass above 0 ${unit}.` : null}
      onValue={onMass}
    />
  );
}
