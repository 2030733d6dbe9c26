import { useState } from 'react';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { emcPct, rhForEmc } from '../../../shared-core/wood/climate/emc.ts';
import { NumberField } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import { AirFigures } from './AirFigures.tsx';
import { AirTempField } from './AirTempField.tsx';
import { airTempC } from './air-fields.ts';

/** Air damper than this has no single EMC (see `emcPct`). */
const DAMPEST_RH = 0.99;

/** From a target: the humidity that brings wood to it and holds it there. */
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
  const { say, formats } = useWords();
  const [mcPct, setMcPct] = useState<number | null>(8);
  const tempC = airTempC(temp, units);
  const wettestPct = tempC.ok ? Math.floor(10 * emcPct(tempC.value, DAMPEST_RH)) / 10 : null;
  const inRange = mcPct !== null && mcPct >= 0 && wettestPct !== null && mcPct <= wettestPct;
  return (
    <>
      <div className="form-grid">
        <AirTempField label={say('air.temperature')} temp={temp} units={units} onTemp={onTemp} />
        <NumberField
          label={say('air.target')}
          unit="%"
          value={mcPct}
          error={
            wettestPct === null || inRange ? null : say('air.target-outside', { driestPct: 0, wettestPct })
          }
          onValue={setMcPct}
        />
      </div>
      {tempC.ok && inRange && (
        <>
          <AirFigures
            figures={[
              {
                name: say('air.humidity-to-hold'),
                value: formats.wholePercent(100 * rhForEmc(tempC.value, mcPct)),
              },
            ]}
          />
          <p className="air-note">{say('air.humidity-note')}</p>
        </>
      )}
    </>
  );
}
