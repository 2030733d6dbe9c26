import { useWords } from '../words.ts';
import { NumberField } from './Field.tsx';

/** Whether a weight was typed, above 0. */
export const isWeight = (weight: number | null): weight is number => weight !== null && weight > 0;

/** A weight that must be typed. */
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
  const { say } = useWords();
  return (
    <NumberField
      label={label}
      unit={unit}
      autoFocus={autoFocus}
      value={weight}
      error={shown && !isWeight(weight) ? say('validation.weight-not-above-zero') : null}
      onValue={onWeight}
    />
  );
}
