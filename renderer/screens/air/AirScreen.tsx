import { useState } from 'react';
import { temperatureFromC } from '../../../shared-core/units/temperature.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { Screen, Sheet } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useUnits } from '../../stores/settings.ts';
import { AirForMc } from './AirForMc.tsx';
import { airRh, airTempC } from './air-fields.ts';
import { EmcChart } from './EmcChart.tsx';
import { McOfAir } from './McOfAir.tsx';
import { RoomTarget } from './RoomTarget.tsx';
import './air.css';

/** A room as most are, to begin with. */
const USUAL_C = 20;

/** What air does to wood, and what air a wanted moisture content needs. */
export function AirScreen() {
  const units = useUnits();
  // Anew for other units, so that 20 °C does not become 20 °F.
  return <Tools key={units} firstTemp={temperatureFromC(USUAL_C, units)} />;
}

function Tools({ firstTemp }: { firstTemp: number }) {
  const units = useUnits();
  const [temp, setTemp] = useState<number | null>(firstTemp);
  const [rhPct, setRhPct] = useState<number | null>(50);
  const tempC = airTempC(temp, units);
  const rh = airRh(rhPct);
  const air = { temp, units, onTemp: setTemp };
  return (
    <Screen
      title="Air and wood"
      lead="What moisture content wood comes to in some air, and what air brings it to a wanted one."
      actions={<ButtonLink href={hrefOf({ name: 'places' })}>Your places over the year</ButtonLink>}
    >
      <div className="air-columns">
        <div className="air-column">
          <Sheet title="What this air does to wood">
            <McOfAir {...air} rhPct={rhPct} onRhPct={setRhPct} />
          </Sheet>
          <Sheet title="What air a moisture content needs">
            <AirForMc {...air} />
          </Sheet>
        </div>
        <Sheet title="At this temperature">
          {tempC.ok ? (
            <EmcChart tempC={tempC.value} rh={rh.ok ? rh.value : null} units={units} />
          ) : (
            <p>{tempC.sentence}</p>
          )}
        </Sheet>
      </div>
      <Sheet title="My room’s humidity">
        <RoomTarget firstTemp={firstTemp} units={units} />
      </Sheet>
    </Screen>
  );
}
