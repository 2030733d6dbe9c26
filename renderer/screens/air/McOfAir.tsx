import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { temperatureText, temperatureUnit } from '../../../shared-core/units/temperature.ts';
import { dewPointC } from '../../../shared-core/wood/dew-point.ts';
import { emcPct } from '../../../shared-core/wood/emc.ts';
import { NumberField } from '../../parts/Field.tsx';
import { pctWords } from '../../parts/McValue.tsx';
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
        <NumberField
          label="Temperature of the air"
          unit={temperatureUnit(units)}
          value={temp}
          error={tempC.ok ? null : tempC.sentence}
          onValue={onTemp}
        />
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
          <dl className="air-figures" aria-live="polite">
            <div>
              <dt>Wood comes to (EMC)</dt>
              <dd>{pctWords(emcPct(tempC.value, rh.value))} % MC</dd>
            </div>
            <div>
              <dt>Dew point</dt>
              <dd>{temperatureText(dewPointC(tempC.value, rh.value), units)}</dd>
            </div>
          </dl>
          <p className="air-note">
            Thin wood gets there in days, a thick board in months. Wood colder than the dew point gets wet on
            its face, and the shell reads so.
          </p>
        </>
      )}
    </>
  );
}
