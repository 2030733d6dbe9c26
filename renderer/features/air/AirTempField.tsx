import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { temperatureUnit } from '../../../shared-core/units/temperature.ts';
import { NumberField } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import { airTempC } from './air-fields.ts';

/** The air's temperature, with the range that it must lie in. */
export function AirTempField({
  label,
  temp,
  units,
  onTemp,
}: {
  label: string;
  /** In the person's unit. */
  temp: number | null;
  units: DisplayUnits;
  onTemp: (temp: number | null) => void;
}) {
  const { say } = useWords();
  const tempC = airTempC(temp, units);
  return (
    <NumberField
      label={label}
      unit={temperatureUnit(units)}
      value={temp}
      error={tempC.ok ? null : say(tempC.problem)}
      onValue={onTemp}
    />
  );
}
