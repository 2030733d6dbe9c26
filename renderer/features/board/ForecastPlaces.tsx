import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { PlaceForecast } from '../../../shared-core/wood/drying/forecast.ts';
import { TableFrame } from '../../ui/TableFrame.tsx';
import { useWords } from '../../words.ts';
import { isoOf } from './iso-of.ts';
import { readyWords } from './ready-words.ts';
import './forecast.css';
import { DAY_MS } from '../../../shared-core/time.ts';

const BAR_WIDTH = 200;
const BAR_HEIGHT = 20;

/** When the board is likely ready, in each place: where it is and, side by side, if it were moved today. */
export function ForecastPlaces({ details }: { details: ForecastDetails }) {
  const { say } = useWords();
  const { forecast, places, nowMs, endUse } = details;
  const lastMs = Math.max(
    nowMs + 60 * DAY_MS,
    ...forecast.places.flatMap(({ reach }) => [reach.lateMs ?? 0, reach.likelyMs ?? 0]),
  );
  return (
    <TableFrame name={say('forecast.places')}>
      <table className="table forecast-places">
        <caption>
          {say('forecast.places-caption', { targetRange: endUse, allowedPoints: endUse.maxShellCorePct })}
        </caption>
        <thead>
          <tr>
            <th scope="col">{say('forecast.place')}</th>
            <th scope="col">{say('forecast.likely-ready')}</th>
            <th scope="col" className="forecast-bar-cell">
              <span className="spoken-only">{say('forecast.timeline')}</span>
              <span aria-hidden="true">{say('forecast.timeline-until', { lastOn: isoOf(lastMs) })}</span>
            </th>
            <th scope="col">{say('forecast.lowest-emc-head')}</th>
          </tr>
        </thead>
        <tbody>
          {forecast.places.map((place, index) => (
            <PlaceRow
              key={place.placeId}
              place={place}
              name={places[index]!.name}
              stays={index === 0}
              nowMs={nowMs}
              lastMs={lastMs}
            />
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
}

function PlaceRow({
  place,
  name,
  stays,
  nowMs,
  lastMs,
}: {
  place: PlaceForecast;
  name: string;
  stays: boolean;
  nowMs: number;
  lastMs: number;
}) {
  const words = useWords();
  const { say, formats } = words;
  const { reach, floorPct, floorMonth } = place;
  const ready = readyWords(place, nowMs, words);
  return (
    <tr>
      <th scope="row">
        <span translate="no">{name}</span>
        <small>{say(stays ? 'forecast.here-now' : 'forecast.if-moved-today')}</small>
      </th>
      {reach.earlyMs === null ? (
        <td colSpan={2} className="forecast-never">
          {ready}
        </td>
      ) : (
        <>
          <td className="forecast-when">{reach.likelyMs === null ? ready : <strong>{ready}</strong>}</td>
          <td className="forecast-bar-cell">
            <ReachBar reach={reach} fromMs={nowMs} toMs={lastMs} />
          </td>
        </>
      )}
      <td>
        {formats.mc(floorPct.median)} <small>{formats.month(floorMonth, 'short')}</small>
      </td>
    </tr>
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
  const [left, right] = [at(earlyMs ?? toMs), at(lateMs ?? toMs)];
  const middle = BAR_HEIGHT / 2;
  return (
    <svg
      className="forecast-bar"
      viewBox={`0 0 ${BAR_WIDTH} ${BAR_HEIGHT}`}
      preserveAspectRatio="xMinYMid meet"
      aria-hidden="true"
    >
      <path className="forecast-bar-line" d={`M0 ${middle}H${BAR_WIDTH}`} />
      <path
        className="forecast-reach"
        d={`M${left} ${middle}H${right}M${left} ${middle - 5}v10${lateMs === null ? '' : `M${right} ${middle - 5}v10`}`}
      />
      {likelyMs !== null && (
        <path className="forecast-reach-likely" d={`M${at(likelyMs)} ${middle - 7}l5 7-5 7-5-7z`} />
      )}
    </svg>
  );
}
