import { useState } from 'react';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { emcPct, rhForEmc } from '../../../shared-core/wood/climate/emc.ts';
import { NumberField } from '../../parts/Field.tsx';
import { AirFigures } from './AirFigures.tsx';
import { AirTempField } from './AirTempField.tsx';
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
        <AirTempField label="Temperature of the air" temp={temp} units={units} onTemp={onTemp} />
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
          <AirFigures
            figures={[
              { name: 'Keep the air at', value: `${Math.round(100 * rhForEmc(tempC.value, mcPct))} % RH` },
            ]}
          />
          <p className="air-note">
            Drier, and the wood goes on drying past it; damper, and it never gets there.
          </p>
        </>
      )}
    </>
  );
}
