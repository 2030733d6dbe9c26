import { type ComponentProps, type ReactNode, useId, useState } from 'react';
import { twoNumbersIn } from '../../shared-core/contract/validation.ts';
import { parseDecimal } from '../../shared-core/units/decimal.ts';
import { useWords } from '../words.ts';
import { afterPress } from './after-press.ts';
import './field.css';

interface FieldWords<V = string> {
  label: ReactNode;
  /** How to fill it in. */
  hint?: ReactNode;
  /** What is wrong with what was typed, as a sentence. */
  error?: string | null;
  /** What another window saved in it meanwhile, where this person typed something else; undefined where none did. */
  saved?: V | null | undefined;
}

/** A field's hint, with what was saved in it meanwhile; undefined where there is neither. */
export function useHint(hint: ReactNode, saved: FieldWords['saved']): ReactNode {
  const { say } = useWords();
  if (saved === undefined) return hint;
  return (
    <>
      {hint}{' '}
      <strong className="field-saved">
        {say('conflict.saved', { savedText: saved || say('conflict.blank') })}
      </strong>
    </>
  );
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
  hint: ownHint,
  error,
  saved,
  children,
}: FieldWords & { children: (wiring: FieldWiring) => ReactNode }) {
  const id = useId();
  const hint = useHint(ownHint, saved);
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
        <p id={`${id}-hint`} className="soft">
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

type TextProps<T extends 'input' | 'textarea'> = FieldWords &
  ControlProps<T> & { value: string; onValue: (value: string) => void };

export function TextField({ label, hint, error, saved, onValue, ...rest }: TextProps<'input'>) {
  return (
    <Field {...{ label, hint, error, saved }}>
      {(wiring) => (
        <input
          type="text"
          autoComplete="off"
          {...rest}
          {...wiring}
          onChange={({ target }) => onValue(target.value)}
        />
      )}
    </Field>
  );
}

export function TextArea({ label, hint, error, saved, onValue, ...rest }: TextProps<'textarea'>) {
  return (
    <Field {...{ label, hint, error, saved }}>
      {(wiring) => (
        <textarea rows={3} {...rest} {...wiring} onChange={({ target }) => onValue(target.value)} />
      )}
    </Field>
  );
}

/** What a field that is typed as text and read as a number is given. */
export type NumberFieldProps = FieldWords<number> &
  ControlProps<'input'> & {
    /** Null for an empty field, NaN for what cannot be read. */
    value: number | null;
    unit?: string | undefined;
    /** Takes the value, and the text that it was read from. */
    onValue: (value: number | null, text: string) => void;
  };

/** Whether a text ends with a unit: "7 ft 3 in", 7'3". */
const hasUnit = (text: string): boolean => /[\p{L}"'′″’”]\s*$/u.test(text);

/**
 * A number, typed as text in the person's own way. What was typed stays as it was ("12,") for as long as it means the
 * value; a value set from outside is written by `write`, with the person's decimal mark. What cannot be read, or could
 * mean two numbers, is named once the field was left.
 *
 * @param read       null for an empty text, NaN for what cannot be read
 * @param unreadable what the field says then
 * @param meaning    what it says of a value that was typed otherwise than it is written
 */
export function TypedNumberField({
  label,
  hint,
  error,
  saved,
  value,
  unit,
  onValue,
  onBlur,
  read: readOne,
  write: writePlain,
  unreadable,
  meaning,
  ...rest
}: Omit<NumberFieldProps, 'saved'> & {
  /** A text as it is to be shown. */
  saved?: FieldWords<number | string>['saved'];
  read: (text: string) => number | null;
  write: (value: number) => string;
  unreadable: (typedText: string) => string;
  meaning?: (value: number) => string;
}) {
  const { say, formats } = useWords();
  const twoNumbers = (typed: string) => twoNumbersIn(typed, formats.decimalMark);
  const read = (typed: string) => (twoNumbers(typed) ? Number.NaN : readOne(typed));
  const write = (toWrite: number) => writePlain(toWrite).replace('.', formats.decimalMark);
  const written = value === null || Number.isNaN(value) ? '' : write(value);
  const [text, setText] = useState(written);
  const [wasLeft, setWasLeft] = useState(false);
  const shown = Object.is(read(text), value) ? text : written;
  const isUnreadable = Number.isNaN(read(shown) ?? 0) && (wasLeft || Boolean(error));
  const both = twoNumbers(shown);
  const problem = both ? say(both) : unreadable(shown.trim());
  const isOtherwise = value !== null && written !== '' && shown.trim() !== written;
  const withUnit = (text: string) => (unit && !hasUnit(text) ? `${text} ${unit}` : text);
  return (
    <Field
      label={label}
      hint={isOtherwise && meaning ? meaning(value) : hint}
      error={isUnreadable ? problem : error}
      saved={typeof saved === 'number' ? withUnit(write(saved)) : saved}
    >
      {(wiring) => (
        <span className="marked">
          <input
            type="text"
            autoComplete="off"
            {...rest}
            {...wiring}
            value={shown}
            onBlur={(event) => {
              afterPress(() => setWasLeft(true));
              onBlur?.(event);
            }}
            onChange={({ target }) => {
              setText(target.value);
              onValue(read(target.value), target.value);
            }}
          />
          {unit && !hasUnit(shown) && <span className="field-unit">{unit}</span>}
        </span>
      )}
    </Field>
  );
}

const same = (value: number): number => value;

/** A number with a point or a comma; where it is typed in the person's units, the value is still in SI. */
export function NumberField({
  fromSi = same,
  toSi = same,
  ...props
}: NumberFieldProps & { fromSi?: (value: number) => number; toSi?: (typed: number) => number }) {
  const { say } = useWords();
  return (
    <TypedNumberField
      inputMode="decimal"
      {...props}
      read={(text) => {
        const typed = parseDecimal(text);
        return typed === null ? null : toSi(typed);
      }}
      write={(value) => String(fromSi(value))}
      unreadable={(typedText) => say('validation.not-a-number', { typedText })}
    />
  );
}

/** One of a few, of which the person sees the chosen one; null is the choice of none. */
export function Select<V extends string | number | null>({
  label,
  hint,
  error,
  saved,
  value,
  options,
  onValue,
  ...rest
}: FieldWords<V> &
  ControlProps<'select'> & {
    value: V;
    /** `isName`: the label is a name that a person gave. */
    options: readonly { value: NoInfer<V>; label: string; isName?: boolean }[];
    onValue: (value: V) => void;
  }) {
  const [chosen, savedOption] = [value, saved].map((each) => options.find((option) => option.value === each));
  return (
    <Field {...{ label, hint, error }} saved={saved === undefined ? saved : savedOption?.label}>
      {(wiring) => (
        <span className="field-select" data-chosen={chosen?.label}>
          <select
            {...rest}
            {...wiring}
            value={value ?? ''}
            onChange={({ target }) => onValue(options[target.selectedIndex]!.value)}
          >
            {options.map((option) => (
              <option
                key={option.value}
                value={option.value ?? ''}
                translate={option.isName ? 'no' : undefined}
              >
                {option.label}
              </option>
            ))}
          </select>
        </span>
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
      <label className="marked">
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
        <p id={`${id}-hint`} className="soft">
          {hint}
        </p>
      )}
    </div>
  );
}
