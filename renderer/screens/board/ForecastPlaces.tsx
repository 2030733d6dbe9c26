import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import { monthNames } from '../../../shared-core/units/month-names.ts';
import type { PlaceForecast } from '../../../shared-core/wood/drying/forecast.ts';
import { dayWords } from '../../parts/days.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { TableFrame } from '../../parts/TableFrame.tsx';
import './forecast.css';

const DAY_MS = 86_400_000;
const BAR_WIDTH = 200;
const BAR_HEIGHT = 20;

/** Where it would be fit for its use, and when: where it stands and, side by side, if it were moved today. */
export function ForecastPlaces({ details }: { details: ForecastDetails }) {
  const { forecast, places, nowMs, endUse } = details;
  const lastMs = Math.max(
    nowMs + 60 * DAY_MS,
    ...forecast.places.flatMap(({ reach }) => [reach.lateMs ?? 0, reach.likelyMs ?? 0]),
  );
  return (
    <TableFrame name="Days by place">
      <table className="table forecast-places">
        <caption>
          Day on which it is within {endUse.minPct} to {endUse.maxPct} %, with its core near enough to its
          shell
        </caption>
        <thead>
          <tr>
            <th scope="col">In</th>
            <th scope="col">Earliest</th>
            <th scope="col">Likely</th>
            <th scope="col">Latest</th>
            <th scope="col" className="forecast-bar-cell">
              <span className="spoken-only">The same as a line of time</span>
              <span aria-hidden="true">today → {dayText(lastMs)}</span>
            </th>
            <th scope="col">Lowest, driest month</th>
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
  place: { reach, floorPct, floorMonth, never },
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
  const day = (atMs: number | null, otherwise: string) =>
    atMs === null ? otherwise : atMs - nowMs < DAY_MS ? 'today' : dayText(atMs);
  return (
    <tr>
      <th scope="row">
        {name}
        <small>{stays ? 'where it stands' : 'if moved today'}</small>
      </th>
      {reach.earlyMs === null ? (
        <td colSpan={4} className="forecast-never">
          {never ? 'Never: the air there is too damp for it.' : 'Not within two years.'}
        </td>
      ) : (
        <>
          <td>{day(reach.earlyMs, '–')}</td>
          <td>
            <strong>{day(reach.likelyMs, 'not likely')}</strong>
          </td>
          <td>{day(reach.lateMs, 'not certain')}</td>
          <td className="forecast-bar-cell">
            <ReachBar reach={reach} fromMs={nowMs} toMs={lastMs} />
          </td>
        </>
      )}
      <td>
        {pctWords(floorPct.median)} % <small>{monthNames[floorMonth - 1]}</small>
      </td>
    </tr>
  );
}

const dayText = (atMs: number) => dayWords(new Date(atMs).toISOString());

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
