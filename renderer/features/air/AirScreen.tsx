import { useState } from 'react';
import { temperatureFromC } from '../../../shared-core/units/temperature.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useUnits } from '../../stores/settings.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { Screen, Sheet } from '../../ui/Screen.tsx';
import { Sources } from '../../ui/Sources.tsx';
import { useWords } from '../../words.ts';
import { AirForMc } from './AirForMc.tsx';
import { airRh, airTempC } from './air-fields.ts';
import { EmcChart } from './EmcChart.tsx';
import { McOfAir } from './McOfAir.tsx';
import { RoomTarget } from './RoomTarget.tsx';
import './air.css';

/** A room as most are, to begin with. */
const USUAL_C = 20;

/** The EMC of any air, and the air for any target. */
export function AirScreen() {
  const units = useUnits();
  // A new form for other units, so that 20 °C does not become 20 °F.
  return <Tools key={units} firstTemp={temperatureFromC(USUAL_C, units)} />;
}

function Tools({ firstTemp }: { firstTemp: number }) {
  const units = useUnits();
  const { say } = useWords();
  const [temp, setTemp] = useState<number | null>(firstTemp);
  const [rhPct, setRhPct] = useState<number | null>(50);
  const tempC = airTempC(temp, units);
  const rh = airRh(rhPct);
  const air = { temp, units, onTemp: setTemp };
  return (
    <Screen
      title={say('air.title')}
      lead={say('air.lead')}
      actions={<ButtonLink href={hrefOf({ name: 'places' })}>{say('air.places')}</ButtonLink>}
    >
      <div className="air-columns">
        <div className="air-column">
          <Sheet title={say('air.of-this-air')}>
            <McOfAir {...air} rhPct={rhPct} onRhPct={setRhPct} />
          </Sheet>
          <Sheet title={say('air.for-target')}>
            <AirForMc {...air} />
          </Sheet>
        </div>
        <Sheet title={say('air.at-this-temperature')}>
          {tempC.ok ? (
            <EmcChart tempC={tempC.value} rh={rh.ok ? rh.value : null} />
          ) : (
            <p>{say(tempC.problem)}</p>
          )}
          <Sources sources={[say('air.emc-source')]} />
        </Sheet>
      </div>
      <Sheet title={say('air.room')}>
        <RoomTarget firstTemp={firstTemp} units={units} />
      </Sheet>
    </Screen>
  );
}
