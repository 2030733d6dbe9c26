import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import {
  celsiusFromTemperature,
  temperatureText,
  temperatureUnit,
} from '../../../shared-core/units/temperature.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Checkbox, NumberField } from '../../parts/Field.tsx';

/** What a person said about the wood's temperature, in their own unit. */
export interface TypedTemperature {
  typed: number | null;
  unknown: boolean;
}

/** The same bounds as the contract's `woodTempSchema`. */
const LOWEST_C = -40;
const HIGHEST_C = 80;

/**
 * What was said, as a temperature or as the sentence that is wrong with it.
 */
export function readTemperature(
  { typed, unknown }: TypedTemperature,
  units: DisplayUnits,
): { ok: true; woodTempC: number | null } | { ok: false; sentence: string } {
  if (unknown) return { ok: true, woodTempC: null };
  if (typed === null || Number.isNaN(typed)) {
    return { ok: false, sentence: 'Type the wood’s temperature, or tick that you don’t know it.' };
  }
  const woodTempC = celsiusFromTemperature(typed, units);
  if (woodTempC < LOWEST_C || woodTempC > HIGHEST_C) {
    return {
      ok: false,
      sentence: `Wood is between ${temperatureText(LOWEST_C, units)} and ${temperatureText(HIGHEST_C, units)}. Check the number and the unit.`,
    };
  }
  return { ok: true, woodTempC };
}

/** Asks for the temperature of the wood itself, and says what it costs not to know it. */
export function TemperatureField({
  value,
  units,
  error,
  autoFocus = false,
  onValue,
}: {
  value: TypedTemperature;
  units: DisplayUnits;
  error: string | null;
  autoFocus?: boolean;
  onValue: (value: TypedTemperature) => void;
}) {
  const isFrozen = !value.unknown && value.typed !== null && celsiusFromTemperature(value.typed, units) <= 0;
  return (
    <div className="temperature-field">
      <NumberField
        label="Temperature of the wood"
        hint="Of the wood, not of the air: in the morning a pile is still as cold as the night was."
        unit={temperatureUnit(units)}
        value={value.typed}
        error={error}
        disabled={value.unknown}
        autoFocus={autoFocus}
        onValue={(typed) => onValue({ ...value, typed })}
      />
      <Checkbox
        label="I don’t know it"
        checked={value.unknown}
        onChecked={(unknown) => onValue({ ...value, unknown })}
      />
      {value.unknown && (
        <Banner kind="caution">
          Readings are then not corrected for temperature. Every 5.6 °C (10 °F) that the wood is colder or
          warmer than the meter’s own temperature shifts a reading by about half a percent of moisture
          content, and the calls lean on it less.
        </Banner>
      )}
      {isFrozen && (
        <Banner kind="caution">
          At or below freezing no pin reading is valid. Let the boards warm up before you trust a call.
        </Banner>
      )}
    </div>
  );
}
