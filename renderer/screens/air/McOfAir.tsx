import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { temperatureText } from '../../../shared-core/units/temperature.ts';
import { dewPointC } from '../../../shared-core/wood/climate/dew-point.ts';
import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import { NumberField } from '../../parts/Field.tsx';
import { pctWords } from '../../parts/McValue.tsx';
import { AirFigures } from './AirFigures.tsx';
import { AirTempField } from './AirTempField.tsx';
import { airRh, airTempC } from './air-fields.ts';

/** From temperature and humidity: the moisture content that wood comes to, and the dew point. */
export function McOfAir({
  temp,
  rhPct,
  units,
  onTemp,
  onRhPct,
}: {
  /** In the person's unit. */
  temp: number | null;
  rhPct: number | null;
  units: DisplayUnits;
  onTemp: (temp: number | null) => void;
  onRhPct: (rhPct: number | null) => void;
}) {
  const tempC = airTempC(temp, units);
  const rh = airRh(rhPct);
  return (
    <>
      <div className="form-grid">
        <AirTempField label="Temperature of the air" temp={temp} units={units} onTemp={onTemp} />
        <NumberField
          label="Relative humidity"
          unit="%"
          value={rhPct}
          error={rh.ok ? null : rh.sentence}
          onValue={onRhPct}
        />
      </div>
      {tempC.ok && rh.ok && (
        <>
          <AirFigures
            figures={[
              { name: 'Wood comes to (EMC)', value: `${pctWords(emcPct(tempC.value, rh.value))} % MC` },
              { name: 'Dew point', value: temperatureText(dewPointC(tempC.value, rh.value), units) },
            ]}
          />
          <p className="air-note">
            Thin wood gets there in days, a thick board in months. Wood colder than the dew point gets wet on
            its face, and the shell reads so.
          </p>
        </>
      )}
    </>
  );
}
