import type { DisplayUnits } from '../../shared-core/units/length.ts';
import { celsiusFromTemperature, temperatureUnit } from '../../shared-core/units/temperature.ts';
import type { Message } from '../../shared-core/words/message.ts';
import { Banner } from '../ui/Banner.tsx';
import { useWords } from '../words.ts';
import { Checkbox, NumberField } from './Field.tsx';
import type { TypedTemperature } from './wood-temp.ts';
import './temperature-field.css';

/** How much colder or warmer wood shifts a reading by about half a point: 10 °F, from memory. */
const HALF_POINT_K = 5.6;

/** Asks for the temperature of the wood itself, and says what it costs not to know it. */
export function TemperatureField({
  value,
  units,
  problem,
  autoFocus = false,
  onValue,
}: {
  value: TypedTemperature;
  units: DisplayUnits;
  problem: Message | null;
  autoFocus?: boolean;
  onValue: (value: TypedTemperature) => void;
}) {
  const { say } = useWords();
  const isFrozen = !value.unknown && value.typed !== null && celsiusFromTemperature(value.typed, units) <= 0;
  return (
    <div className="temperature-field">
      <NumberField
        label={say('wood-temp.label')}
        hint={say('wood-temp.hint')}
        unit={temperatureUnit(units)}
        value={value.typed}
        error={problem && say(problem)}
        disabled={value.unknown}
        autoFocus={autoFocus}
        onValue={(typed) => onValue({ ...value, typed })}
      />
      <Checkbox
        label={say('wood-temp.unknown')}
        checked={value.unknown}
        onChecked={(unknown) => onValue({ ...value, unknown })}
      />
      {value.unknown && (
        <Banner kind="caution">
          {say('wood-temp.unknown-effect', { warmerStepK: HALF_POINT_K, shiftPoints: 0.5 })}
        </Banner>
      )}
      {isFrozen && <Banner kind="caution">{say('wood-temp.frozen')}</Banner>}
    </div>
  );
}
