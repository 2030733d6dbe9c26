import { NumberField } from './Field.tsx';

/** Whether a mass was typed that a body can have. */
export const isWeight = (weight: number | null): weight is number => weight !== null && weight > 0;

/** A mass that must be typed. */
export function WeightField({
  label,
  unit,
  weight,
  shown,
  onWeight,
  autoFocus,
}: {
  label: string;
  unit: string;
  weight: number | null;
  /** Whether to mark what is wrong: from the first try to save. */
  shown: boolean;
  onWeight: (weight: number | null) => void;
  autoFocus?: boolean;
}) {
  return (
    <NumberField
      label={label}
      unit={unit}
      autoFocus={autoFocus}
      value={weight}
      error={shown && !isWeight(weight) ? `Type a mass above 0 ${unit}.` : null}
      onValue={onWeight}
    />
  );
}
