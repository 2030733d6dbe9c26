import { type ReactNode, useId } from 'react';
import css from './choice.module.css';

/** One of a few, all in sight: native radio buttons that look like a row of buttons, or like a list. */
export function Choice<V extends string>({
  label,
  value,
  options,
  isList = false,
  onValue,
}: {
  label: ReactNode;
  /** Null: none was chosen yet. */
  value: V | null;
  /** `isName`: the label is a name that a person gave. */
  options: readonly { value: V; label: ReactNode; isName?: boolean }[];
  /** One option per line, for long ones. */
  isList?: boolean;
  onValue: (value: V) => void;
}) {
  const name = useId();
  return (
    <fieldset className={css.choice}>
      <legend>{label}</legend>
      <div className={`${css.options} ${isList ? css.list : ''}`}>
        {options.map((option) => (
          <label key={option.value} className={`marked ${option.value === value ? css.chosen : ''}`}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onValue(option.value)}
            />
            <span translate={option.isName ? 'no' : undefined}>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
