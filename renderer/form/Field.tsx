import { type ComponentProps, type ReactNode, useId, useState } from 'react';
import { useWords } from '../words.ts';
import { parseDecimal } from './decimal.ts';
import './field.css';

interface FieldWords {
  label: ReactNode;
  /** How to fill it in. */
  hint?: ReactNode;
  /** What is wrong with what was typed, as a sentence. */
  error?: string | null;
}

/** What a control needs so that its label, hint and error are read out with it. */
export interface FieldWiring {
  id: string;
  'aria-describedby': string | undefined;
  'aria-invalid': boolean | undefined;
}

/** A control with its label above, a hint and an error sentence below. */
export function Field({
  label,
  hint,
  error,
  children,
}: FieldWords & { children: (wiring: FieldWiring) => ReactNode }) {
  const id = useId();
  const described = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children({
        id,
        'aria-describedby': described || undefined,
        'aria-invalid': error ? true : undefined,
      })}
      {hint && (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      )}
      {error && (
        <p id={`${id}-error`} className="field-error" role="alert">
          {error}
        </p>
      )}
    </div>
  );
}

type ControlProps<T extends 'input' | 'select' | 'textarea'> = Omit<
  ComponentProps<T>,
  'id' | 'value' | 'onChange'
>;

export function TextField({
  label,
  hint,
  error,
  value,
  onValue,
  ...rest
}: FieldWords & ControlProps<'input'> & { value: string; onValue: (value: string) => void }) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(wiring) => (
        <input
          type="text"
          autoComplete="off"
          {...rest}
          {...wiring}
          value={value}
          onChange={(event) => onValue(event.target.value)}
        />
      )}
    </Field>
  );
}

export function TextArea({
  label,
  hint,
  error,
  value,
  onValue,
  ...rest
}: FieldWords & ControlProps<'textarea'> & { value: string; onValue: (value: string) => void }) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(wiring) => (
        <textarea
          rows={3}
          {...rest}
          {...wiring}
          value={value}
          onChange={(event) => onValue(event.target.value)}
        />
      )}
    </Field>
  );
}

/**
 * A number with a point or a comma. `onValue` gets null for an empty field and NaN for what is not a number;
 * the field says so itself.
 */
export function NumberField({
  label,
  hint,
  error,
  value,
  unit,
  onValue,
  ...rest
}: FieldWords &
  ControlProps<'input'> & {
    value: number | null;
    unit?: string;
    onValue: (value: number | null) => void;
  }) {
  const { say } = useWords();
  const [text, setText] = useState(value === null ? '' : String(value));
  const typed = parseDecimal(text);
  // A value set from outside replaces the text; one that came from this text leaves it as it was typed ("12,").
  const shown = Object.is(typed, value) ? text : value === null || Number.isNaN(value) ? '' : String(value);
  const isNotNumber = shown === text && typed !== null && Number.isNaN(typed);
  return (
    <Field
      label={label}
      hint={hint}
      error={isNotNumber ? say('validation.not-a-number', { typedText: text.trim() }) : error}
    >
      {(wiring) => (
        <span className="field-with-unit">
          <input
            type="text"
            inputMode="decimal"
            autoComplete="off"
            {...rest}
            {...wiring}
            value={shown}
            onChange={(event) => {
              setText(event.target.value);
              onValue(parseDecimal(event.target.value));
            }}
          />
          {unit && <span className="field-unit">{unit}</span>}
        </span>
      )}
    </Field>
  );
}

export function Select<V extends string>({
  label,
  hint,
  error,
  value,
  options,
  onValue,
  ...rest
}: FieldWords &
  ControlProps<'select'> & {
    value: V;
    /** `isName`: the label is a name that a person gave. */
    options: readonly { value: V; label: string; isName?: boolean }[];
    onValue: (value: V) => void;
  }) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(wiring) => (
        <select {...rest} {...wiring} value={value} onChange={(event) => onValue(event.target.value as V)}>
          {options.map((option) => (
            <option key={option.value} value={option.value} translate={option.isName ? 'no' : undefined}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** A yes or no, with the words to the right of the box. */
export function Checkbox({
  label,
  hint,
  checked,
  onChecked,
  ...rest
}: Omit<ComponentProps<'input'>, 'id' | 'type' | 'checked' | 'onChange'> & {
  label: ReactNode;
  hint?: ReactNode;
  checked: boolean;
  onChecked: (checked: boolean) => void;
}) {
  const id = useId();
  return (
    <div className="field field-check">
      <label>
        <input
          type="checkbox"
          aria-describedby={hint ? `${id}-hint` : undefined}
          {...rest}
          checked={checked}
          onChange={(event) => onChecked(event.target.checked)}
        />
        <span>{label}</span>
      </label>
      {hint && (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      )}
    </div>
  );
}
