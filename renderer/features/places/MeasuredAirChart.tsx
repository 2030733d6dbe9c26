import type { PlaceAirLog } from '../../../shared-core/contract/air.ts';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { mcAxis, timeAxis } from '../../../shared-core/drawing/chart/axes.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { withinYear } from '../../../shared-core/wood/climate/within-year.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';

const noon = ({ dayMs }: PlaceAirLog['days'][number]): number => dayMs + DAY_MS / 2;

/** The EMC of the days that were measured at a place, beside that of its typical air. */
export function MeasuredAirChart({
  place: { name: placeName, air },
  days,
}: {
  place: Pick<PlaceRow, 'name' | 'air'>;
  days: PlaceAirLog['days'];
}) {
  const words = useWords();
  const { say, formats } = words;
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return null;
  const { monthlyEmcPct } = emcOfYear(air);
  const pointOf = (day: typeof first) => ({
    x: noon(day),
    y: day.emcPct,
    more: {
      [say('places.temperature')]: formats.temperature(day.tempC),
      [say('places.humidity')]: formats.wholePercent(100 * day.rh),
    },
  });
  const used = days.filter(({ doubt }) => doubt === null);
  return (
    <Chart
      title={say('places.measured-chart', { placeName })}
      summary={say('places.measured-summary', { days: used.length, emcPct: last.emcPct })}
      x={timeAxis(noon(first), noon(last), words)}
      y={mcAxis(say('places.emc'), words)}
      layers={[
        {
          kind: 'line',
          name: say('places.typical-air'),
          color: 'ink-soft',
          stroke: 'dashed',
          values: days.map((day) => ({ x: noon(day), y: withinYear(monthlyEmcPct, noon(day)) })),
        },
        {
          kind: 'line',
          name: say('places.measured'),
          color: 'accent',
          stroke: 'solid',
          values: used.map(pointOf),
        },
        {
          kind: 'points',
          name: say('places.measured-unused'),
          color: 'ink',
          shape: 'triangle',
          values: days.filter(({ doubt }) => doubt !== null).map(pointOf),
        },
      ]}
    />
  );
}
