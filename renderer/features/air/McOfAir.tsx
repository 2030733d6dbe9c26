import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { dewPointC } from '../../../shared-core/wood/climate/dew-point.ts';
import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import { NumberField } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import { AirFigures } from './AirFigures.tsx';
import { AirTempField } from './AirTempField.tsx';
import { airRh, airTempC } from './air-fields.ts';

/** From temperature and humidity: the EMC and the dew point. */
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
  const { say, formats } = useWords();
  const tempC = airTempC(temp, units);
  const rh = airRh(rhPct);
  return (
    <>
      <div className="form-grid">
        <AirTempField label={say('air.temperature')} temp={temp} units={units} onTemp={onTemp} />
        <NumberField
          label={say('air.humidity')}
          unit="%"
          value={rhPct}
          error={rh.ok ? null : say(rh.problem)}
          onValue={onRhPct}
        />
      </div>
      {tempC.ok && rh.ok && (
        <>
          <AirFigures
            figures={[
              { name: say('air.emc'), value: formats.mc(emcPct(tempC.value, rh.value)) },
              { name: say('air.dew-point'), value: formats.temperature(dewPointC(tempC.value, rh.value)) },
            ]}
          />
          <p className="air-note">{say('air.emc-note')}</p>
        </>
      )}
    </>
  );
}
