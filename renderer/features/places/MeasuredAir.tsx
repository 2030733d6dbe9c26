import { useState } from 'react';
import type { PlaceAirLog } from '../../../shared-core/contract/air.ts';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { DAMPEST_RH, emcPct } from '../../../shared-core/wood/climate/emc.ts';
import type { AirDoubt } from '../../../shared-core/wood/climate/measured-air.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { AddSensorForm } from './AddSensorForm.tsx';
import { MeasuredAirChart } from './MeasuredAirChart.tsx';
import { isOf, MeasuredDays } from './MeasuredDays.tsx';
import { SensorLine } from './SensorLine.tsx';
import { TypeAirForm } from './TypeAirForm.tsx';

/** A sensor that says nothing for so long is worth a look. */
const SILENT_DAYS = 3;

/** The air of a place as it is measured there: the newest value, its days beside typical ones, and the sensors there. */
export function MeasuredAir({ place }: { place: PlaceRow }) {
  const { say } = useWords();
  const asked = useQuery('air.ofPlace', { placeId: place.id });
  const sensors = useQuery('sensors.list', {});
  const [form, setForm] = useState<'typed' | 'sensor' | null>(null);
  const { name: placeName } = place;
  return (
    <>
      <Await of={[asked, sensors]}>
        {(log, all) => {
          // A clock that was ahead would stretch the chart by years.
          const known = log.days.filter(({ doubt }) => doubt !== 'later');
          const here = all.filter(({ placeId }) => placeId === place.id);
          return (
            <>
              <Newest log={log} isLogged={here.length > 0} />
              {known.length > 1 && <MeasuredAirChart place={place} days={known} />}
              <Unused log={log} />
              {log.days.length > 0 && <MeasuredDays place={place} log={log} />}
              {here.length > 0 && (
                <ul className="list" aria-label={say('places.sensors-at', { placeName })}>
                  {here.map((sensor) => (
                    <SensorLine key={sensor.id} sensor={sensor} />
                  ))}
                </ul>
              )}
            </>
          );
        }}
      </Await>
      <Actions>
        <Button onClick={() => setForm('sensor')} aria-label={say('sensors.add-at', { placeName })}>
          {say('sensors.add')}
        </Button>
        <Button onClick={() => setForm('typed')} aria-label={say('places.type-air-at', { placeName })}>
          {say('places.type-air')}
        </Button>
      </Actions>
      {form === 'typed' && <TypeAirForm place={place} onClose={() => setForm(null)} />}
      {form === 'sensor' && <AddSensorForm place={place} onClose={() => setForm(null)} />}
    </>
  );
}

function Newest({ log: { last, usedDays, from }, isLogged }: { log: PlaceAirLog; isLogged: boolean }) {
  const { say } = useWords();
  if (last?.tempC == null || last.rh === null) return isLogged ? <p>{say('places.no-value-yet')}</p> : null;
  const silentDays = Math.floor((Date.parse(new Date().toISOString()) - Date.parse(last.at)) / DAY_MS);
  const air = {
    airTempC: last.tempC,
    humidityRhPct: 100 * last.rh,
    emcPct: emcPct(last.tempC, Math.min(DAMPEST_RH, last.rh)),
  };
  return (
    <>
      <p>
        {last.isOfDay
          ? say('places.newest-typed', { ...air, measuredOn: last.at })
          : say('places.newest-air', { ...air, measuredAt: last.at })}
      </p>
      {isLogged && silentDays >= SILENT_DAYS && <p>{say('places.silent', { days: silentDays })}</p>}
      {from !== null && (
        <p className="soft">{say('places.measured-since', { sinceOn: from, days: usedDays })}</p>
      )}
    </>
  );
}

/** Why some days are not used, each reason once. */
function Unused({ log: { days, typed } }: { log: Pick<PlaceAirLog, 'days' | 'typed'> }) {
  const { say } = useWords();
  const counts = new Map<AirDoubt | 'unlike-typed', number>();
  for (const day of days) {
    if (day.doubt === null) continue;
    const why = day.doubt === 'unlike' && typed.some(isOf(day)) ? 'unlike-typed' : day.doubt;
    counts.set(why, (counts.get(why) ?? 0) + 1);
  }
  return [...counts].map(([doubt, count]) => (
    <p key={doubt} className="soft">
      {say(`places.unused.${doubt}`, { days: count })}
    </p>
  ));
}
