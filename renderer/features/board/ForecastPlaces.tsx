import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import type { PlaceForecast } from '../../../shared-core/wood/drying/forecast.ts';
import { IntervalMark, paint } from '../../chart/marks.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { ReadyWhen } from './ReadyWhen.tsx';

const BAR = { width: 144, height: 20 };

/** When the board is likely ready, in each place: where it is and, side by side, if it were moved today. */
export function ForecastPlaces({
  details,
  onMove,
}: {
  details: ForecastDetails;
  onMove: (placeId: number) => void;
}) {
  const { say, formats } = useWords();
  const { forecast, places, nowMs, endUse } = details;
  const here = places[0]!;
  const placeOf = (id: number) => places.find(({ placeId }) => placeId === id)!;
  const nameOf = (placeId: number) => placeOf(placeId).name;
  const lastMs = Math.max(
    nowMs + 60 * DAY_MS,
    ...forecast.places.flatMap(({ reach }) => [reach.lateMs ?? 0, reach.likelyMs ?? 0]),
  );
  const timeline: Column<PlaceForecast> = {
    id: 'timeline',
    head: say('forecast.timeline-until', { lastOn: isoOf(lastMs) }),
    cell: ({ placeId, reach }) =>
      isDated(placeOf(placeId)) && <ReachBar reach={reach} fromMs={nowMs} toMs={lastMs} />,
  };
  return (
    <div className={css.places}>
      <DataTable
        name={say('forecast.places')}
        caption={
          endUse.maxShellCorePct === null
            ? say('forecast.places-caption-any', { targetRange: endUse })
            : say('forecast.places-caption', {
                targetRange: endUse,
                allowedPoints: endUse.maxShellCorePct,
              })
        }
        rows={forecast.places}
        keyOf={({ placeId }) => placeId}
        columns={[
          {
            id: 'place',
            head: say('forecast.place'),
            cell: ({ placeId }) => <span translate="no">{nameOf(placeId)}</span>,
            below: ({ placeId }) => placeId === here.placeId && say('forecast.here-now'),
          },
          {
            id: 'ready',
            head: say('forecast.ready'),
            cell: (place) => {
              const ready = <ReadyWhen place={placeOf(place.placeId)} />;
              return isDated(placeOf(place.placeId)) ? <strong>{ready}</strong> : ready;
            },
            sortBy: ({ placeId, reach }) => (isDated(placeOf(placeId)) ? reach.likelyMs : null),
          },
          ...(places.some(isDated) ? [timeline] : []),
          {
            id: 'lowest-emc',
            head: say('forecast.lowest-emc-head'),
            cell: ({ placeId }) => formats.mc(placeOf(placeId).lowestEmcPct),
            below: ({ placeId }) => {
              const { lowestEmcMonth } = placeOf(placeId);
              return lowestEmcMonth === null
                ? say('forecast.all-year')
                : formats.month(lowestEmcMonth, 'short');
            },
            sortBy: ({ placeId }) => placeOf(placeId).lowestEmcPct,
          },
          {
            id: 'move',
            head: say('board.move'),
            headSpokenOnly: true,
            cell: ({ placeId }) =>
              placeId !== here.placeId &&
              placeOf(placeId).ready?.kind !== 'leaves' && (
                <Button
                  kind="quiet"
                  aria-label={say('forecast.move-there', { placeName: nameOf(placeId) })}
                  onClick={() => onMove(placeId)}
                >
                  {say('board.move')}
                </Button>
              ),
          },
        ]}
      />
    </div>
  );
}

/** Whether a day is stated. */
const isDated = ({ ready }: ForecastDetails['places'][number]): boolean =>
  ready?.kind === 'likely' || ready?.kind === 'any-day' || ready?.kind === 'now';

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
  const at = (ms: number) => 6 + ((Math.min(ms, toMs) - fromMs) / (toMs - fromMs)) * (BAR.width - 12);
  return (
    <svg {...BAR} aria-hidden="true">
      <path d={`M0 ${BAR.height / 2}H${BAR.width}`} stroke={paint('line')} />
      <IntervalMark
        color="ready"
        y={BAR.height / 2}
        from={at(earlyMs ?? toMs)}
        to={lateMs && at(lateMs)}
        end={at(toMs)}
        likely={likelyMs && at(likelyMs)}
      />
    </svg>
  );
}
