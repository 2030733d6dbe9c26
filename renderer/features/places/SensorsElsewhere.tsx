import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { SensorLine } from './SensorLine.tsx';

/** Probe thermometers, and hygrometers that are at no place; nothing where there are none. */
export function SensorsElsewhere() {
  const { say } = useWords();
  const asked = useQuery('sensors.list', {});
  return (
    <Await of={[asked]}>
      {(all) => {
        const elsewhere = all.filter(({ placeId }) => placeId === null);
        return elsewhere.length === 0 ? null : (
          <Sheet title={say('sensors.elsewhere')}>
            <ul className="list">
              {elsewhere.map((sensor) => (
                <SensorLine key={sensor.id} sensor={sensor} />
              ))}
            </ul>
          </Sheet>
        );
      }}
    </Await>
  );
}
