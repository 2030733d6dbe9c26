import { type ReactNode, useId } from 'react';
import './choice.css';

/** One of a few, all in sight: native radio buttons that look like a row of buttons. */
export function Choice<V extends string>({
  label,
  value,
  options,
  onValue,
}: {
  label: ReactNode;
  value: V;
  options: readonly { value: V; label: ReactNode }[];
  onValue: (value: V) => void;
}) {
  const name = useId();
  return (
    <fieldset className="choice-row">
      <legend>{label}</legend>
      <div className="choice-options">
        {options.map((option) => (
          <label key={option.value} className={option.value === value ? 'choice-chosen' : ''}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onValue(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
