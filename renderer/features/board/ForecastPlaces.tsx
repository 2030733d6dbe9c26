import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { PlaceForecast } from '../../../shared-core/wood/drying/forecast.ts';
import { IntervalMark } from '../../chart/marks.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';
import { isoOf } from './iso-of.ts';
import { readyWords } from './ready-words.ts';
import './forecast.css';
import { DAY_MS } from '../../../shared-core/time.ts';

const BAR_WIDTH = 200;
const BAR_HEIGHT = 20;

/** When the board is likely ready, in each place: where it is and, side by side, if it were moved today. */
export function ForecastPlaces({ details }: { details: ForecastDetails }) {
  const words = useWords();
  const { say, formats } = words;
  const { forecast, places, nowMs, endUse } = details;
  const lastMs = Math.max(
    nowMs + 60 * DAY_MS,
    ...forecast.places.flatMap(({ reach }) => [reach.lateMs ?? 0, reach.likelyMs ?? 0]),
  );
  return (
    <DataTable
      name={say('forecast.places')}
      caption={say('forecast.places-caption', { targetRange: endUse, allowedPoints: endUse.maxShellCorePct })}
      rows={forecast.places}
      keyOf={({ placeId }) => placeId}
      columns={[
        {
          id: 'place',
          head: say('forecast.place'),
          cell: (place) => <span translate="no">{places[forecast.places.indexOf(place)]?.name}</span>,
          below: (place) =>
            say(place === forecast.places[0] ? 'forecast.here-now' : 'forecast.if-moved-today'),
        },
        {
          id: 'ready',
          head: say('forecast.likely-ready'),
          cell: (place) => {
            const ready = readyWords(place, nowMs, words);
            return place.reach.likelyMs === null ? ready : <strong>{ready}</strong>;
          },
          sortBy: ({ reach }) => reach.likelyMs,
        },
        {
          id: 'timeline',
          head: say('forecast.timeline-until', { lastOn: isoOf(lastMs) }),
          cell: ({ reach }) =>
            reach.earlyMs !== null && <ReachBar reach={reach} fromMs={nowMs} toMs={lastMs} />,
        },
        {
          id: 'lowest-emc',
          head: say('forecast.lowest-emc-head'),
          cell: ({ floorPct }) => formats.mc(floorPct.median),
          below: ({ floorMonth }) => formats.month(floorMonth, 'short'),
          sortBy: ({ floorPct }) => floorPct.median,
        },
      ]}
    />
  );
}

/** The dates of one place on the line of time that all share. */
function ReachBar({
  reach: { earlyMs, likelyMs, lateMs },
  fromMs,
  toMs,
}: {
  reach: PlaceForecast['reach'];
  fromMs: number;
  toMs: number;
}) {
  const at = (ms: number) => 6 + ((Math.min(ms, toMs) - fromMs) / (toMs - fromMs)) * (BAR_WIDTH - 12);
  return (
    <svg
      className="forecast-bar"
      viewBox={`0 0 ${BAR_WIDTH} ${BAR_HEIGHT}`}
      preserveAspectRatio="xMinYMid meet"
      aria-hidden="true"
    >
      <path className="forecast-bar-line" d={`M0 ${BAR_HEIGHT / 2}H${BAR_WIDTH}`} />
      <IntervalMark
        color="ready"
        y={BAR_HEIGHT / 2}
        from={at(earlyMs ?? toMs)}
        to={lateMs && at(lateMs)}
        end={at(toMs)}
        likely={likelyMs && at(likelyMs)}
      />
    </svg>
  );
}
