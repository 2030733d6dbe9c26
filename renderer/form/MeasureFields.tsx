import { type DisplayUnits, longLengthUnit, shortLengthUnit } from '../../shared-core/units/length.ts';
import {
  celsiusFromTemperature,
  temperatureFromC,
  temperatureUnit,
} from '../../shared-core/units/temperature.ts';
import {
  exactLengthText,
  typedLengthMm,
  typedLengthText,
  typedLongLengthMm,
  typedLongLengthText,
  typedQuarters,
} from '../../shared-core/units/typed-length.ts';
import { megohmsOf, parseOhms } from '../../shared-core/units/typed-ohms.ts';
import { kgFromWeight, weightFromKg, weightUnit } from '../../shared-core/units/weight.ts';
import { useUnits } from '../stores/settings.ts';
import { useWords } from '../words.ts';
import { NumberField, type NumberFieldProps, TypedNumberField } from './Field.tsx';

/** A number that is typed and read in the person's units. */
const inUnits =
  (
    unit: (units: DisplayUnits) => string,
    fromSi: (value: number, units: DisplayUnits) => number,
    toSi: (typed: number, units: DisplayUnits) => number,
  ) =>
  (props: NumberFieldProps) => {
    const units = useUnits();
    return (
      <NumberField
        unit={unit(units)}
        {...props}
        fromSi={(value) => fromSi(value, units)}
        toSi={(typed) => toSi(typed, units)}
      />
    );
  };

/** A weight; the value is in kg. */
export const WeightField = inUnits(weightUnit, weightFromKg, kgFromWeight);

/** A temperature; the value is in °C. */
export const TempField = inUnits(temperatureUnit, temperatureFromC, celsiusFromTemperature);

/** A resistance, as "350" megohms, "2.2G" or "800k"; the value is in Ω. */
export function OhmsField(props: NumberFieldProps) {
  const { say } = useWords();
  return (
    <TypedNumberField
      unit="MΩ"
      {...props}
      read={parseOhms}
      write={(ohms) => String(megohmsOf(ohms))}
      unreadable={(typedText) => say('validation.not-a-number', { typedText })}
    />
  );
}

/** A length along a board, as "2.4", "7 ft 3 in" or "220 cm"; the value is in mm. */
export function BoardLengthField(props: NumberFieldProps) {
  const units = useUnits();
  const { say } = useWords();
  return (
    <TypedNumberField
      unit={longLengthUnit(units)}
      {...props}
      read={(text) => typedLongLengthMm(text, units)}
      write={(mm) => typedLongLengthText(mm, units)}
      unreadable={(typedText) => say('board.not-a-board-length', { typedText, exampleLengthMm: 2400 })}
      meaning={(typedLengthMm) => say('board.length-typed', { typedLengthMm })}
    />
  );
}

/** A thickness, width or depth, as a tape measure shows it; the value is in mm. */
export function LengthField({
  write,
  ...props
}: NumberFieldProps & {
  /** Where it is shown by another name than its length. */
  write?: (mm: number) => string;
}) {
  const units = useUnits();
  const { say } = useWords();
  return (
    <TypedNumberField
      unit={shortLengthUnit(units)}
      {...props}
      read={(text) => typedLengthMm(text, units)}
      write={write ?? ((mm) => typedLengthText(mm, units))}
      unreadable={(typedText) => say('board.not-a-length', { typedText, exampleMm: 27 })}
      {...(!props.hint && { meaning: (typedMm: number) => say('board.size-typed', { typedMm }) })}
    />
  );
}

/** A size of paper, as exact as it was given. */
export function PaperSizeField(props: NumberFieldProps) {
  const units = useUnits();
  return <LengthField {...props} write={(mm) => exactLengthText(mm, units)} />;
}

/**
 * A thickness, which may be typed by its name in the trade: "8/4" is 2 in and stays "8/4".
 * @param quarters  8 for 8/4; null where it was given as a length
 */
export function ThicknessField({
  quarters,
  onThickness,
  ...props
}: Omit<NumberFieldProps, 'onValue'> & {
  quarters: number | null;
  onThickness: (mm: number | null, quarters: number | null) => void;
}) {
  return (
    <LengthField
      {...props}
      {...(quarters !== null && { unit: undefined, write: () => `${quarters}/4` })}
      onValue={(mm, text) => onThickness(mm, typedQuarters(text))}
    />
  );
}
