import { useState } from 'react';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { temperatureUnit } from '../../../shared-core/units/temperature.ts';
import { emcPct, rhForEmc } from '../../../shared-core/wood/emc.ts';
import { NumberField } from '../../parts/Field.tsx';
import { airTempC } from './air-fields.ts';

/** Air damper than this has no single EMC (see `emcPct`). */
const DAMPEST_RH = 0.99;

/** From a wanted moisture content: the humidity that brings wood to it and keeps it there. */
export function AirForMc({
  temp,
  units,
  onTemp,
}: {
  /** In the person's unit. */
  temp: number | null;
  units: DisplayUnits;
  onTemp: (temp: number | null) => void;
}) {
  const [mcPct, setMcPct] = useState<number | null>(8);
  const tempC = airTempC(temp, units);
  const wettestPct = tempC.ok ? Math.floor(10 * emcPct(tempC.value, DAMPEST_RH)) / 10 : null;
  const inRange = mcPct !== null && mcPct >= 0 && wettestPct !== null && mcPct <= wettestPct;
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
          label="Wanted moisture content"
          unit="% MC"
          value={mcPct}
          error={
            wettestPct === null || inRange ? null : `Air brings wood to 0 to ${wettestPct.toFixed(1)} % MC.`
          }
          onValue={setMcPct}
        />
      </div>
      {tempC.ok && inRange && (
        <>
          <dl className="air-figures" aria-live="polite">
            <div>
              <dt>Keep the air at</dt>
              <dd>{Math.round(100 * rhForEmc(tempC.value, mcPct))} % RH</dd>
            </div>
          </dl>
          <p className="air-note">
            Drier, and the wood goes on drying past it; damper, and it never gets there.
          </p>
        </>
      )}
    </>
  );
}
