import { useState } from 'react';
import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { Depth } from '../../../shared-core/probing/readings/reading.ts';
import type { Band, PlaceForecast } from '../../../shared-core/wood/drying/forecast.ts';
import { Choice } from '../../parts/Choice.tsx';
import { ChartFigure } from '../../parts/chart/ChartFigure.tsx';
import { ChartLegend, LegendItem } from '../../parts/chart/ChartLegend.tsx';
import { dayWords } from '../../parts/days.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { DepthMark } from './DepthMark.tsx';
import { FORECAST_HEIGHT, ForecastDrawing } from './ForecastDrawing.tsx';
import { halfIntervalPct } from './reading-interval.ts';
import './findings-chart.css';
import './forecast.css';

const DAY_MS = 86_400_000;
/** More places than this are compared in the table alone. */
const MOST_SHOWN = 6;
/** The table of a forecast has about so many lines for the time ahead. */
const TABLE_LINES = 10;

/** What the board was and will likely be: readings, the band ahead where it stands or elsewhere, and what is wanted. */
export function ForecastPlot({ code, details }: { code: string; details: ForecastDetails }) {
  const { forecast, places, endUse, nowMs, readings, stays } = details;
  const [placeId, setPlaceId] = useState(places[0]!.placeId);
  const index = Math.max(
    0,
    places.findIndex((place) => place.placeId === placeId),
  );
  const place = forecast.places[index]!;
  const { name } = places[index]!;
  const span = spanOf(details, place);
  const ahead = place.band;
  return (
    <div className="forecast-plot">
      {places.length > 1 && (
        <Choice
          label="Ahead as if it stood in"
          value={String(places[index]!.placeId)}
          options={places.slice(0, MOST_SHOWN).map((each, at) => ({
            value: String(each.placeId),
            label: at === 0 ? `${each.name} (stays)` : each.name,
          }))}
          onValue={(value) => setPlaceId(Number(value))}
        />
      )}
      <ChartFigure
        title={`Moisture content of ${code}, past and foreseen in ${name}`}
        summary={summaryOf(place, name, details)}
        height={FORECAST_HEIGHT}
        legend={<Legend hasReadings={readings.length > 0} />}
        columns={['Day', 'Average, %', 'from, %', 'to, %', 'Shell, %', 'Core, %']}
        rows={[
          ...lines(forecast.past, span.fromMs, nowMs, 'past'),
          ...lines(ahead, nowMs, span.toMs, 'ahead'),
          ...forecast.residuals
            .filter(({ atMs }) => atMs >= span.fromMs)
            .map(({ atMs, depthFraction, measuredPct, sdPct }) => ({
              key: `read ${atMs} ${depthFraction}`,
              cells: [
                `Read ${dayText(atMs)}, ${depthAt(depthFraction)}`,
                `${pctWords(measuredPct)}`,
                pctWords(measuredPct - halfIntervalPct(sdPct)),
                pctWords(measuredPct + halfIntervalPct(sdPct)),
                '',
                '',
              ],
            })),
        ]}
      >
        {(width) => (
          <ForecastDrawing
            width={width}
            past={forecast.past}
            place={place}
            span={span}
            nowMs={nowMs}
            endUse={endUse}
            stays={stays}
            measured={forecast.residuals.map(({ atMs, depthFraction, measuredPct, sdPct }) => ({
              atMs,
              depth: depthAt(depthFraction),
              pct: measuredPct,
              halfPct: halfIntervalPct(sdPct),
            }))}
          />
        )}
      </ChartFigure>
    </div>
  );
}

const dayText = (atMs: number) => dayWords(new Date(atMs).toISOString());
const depthAt = (fraction: number): Depth => (fraction > 1 / 3 && fraction < 2 / 3 ? 'core' : 'shell');

/** What of the past and the time ahead is worth the room: from a month before the first reading to past the date. */
function spanOf(
  { forecast, nowMs, readings }: ForecastDetails,
  { reach, band }: PlaceForecast,
): { fromMs: number; toMs: number } {
  const begunMs = forecast.past.atMs[0]!;
  const firstMs = readings.length > 0 ? Math.min(...readings.map(({ atMs }) => atMs)) - 30 * DAY_MS : begunMs;
  const reachedMs = reach.lateMs ?? reach.likelyMs;
  const endMs =
    reachedMs === null ? nowMs + 365 * DAY_MS : Math.max(reachedMs + 45 * DAY_MS, nowMs + 90 * DAY_MS);
  return {
    fromMs: forecast.past.atMs.findLast((atMs) => atMs <= firstMs) ?? begunMs,
    toMs: band.atMs.findLast((atMs) => atMs <= endMs) ?? nowMs,
  };
}

function lines(band: Band, fromMs: number, toMs: number, part: string) {
  const within = band.atMs.flatMap((atMs, index) => (atMs >= fromMs && atMs <= toMs ? [index] : []));
  const every = Math.max(1, Math.ceil(within.length / TABLE_LINES));
  return within
    .filter((_, position) => position % every === 0)
    .map((index) => {
      const average = band.average[index]!;
      return {
        key: `${part} ${band.atMs[index]}`,
        cells: [
          dayText(band.atMs[index]!),
          pctWords(average.median),
          pctWords(average.low),
          pctWords(average.high),
          pctWords(band.shell[index]!.median),
          pctWords(band.core[index]!.median),
        ],
      };
    });
}

function summaryOf(
  { reach, floorPct }: PlaceForecast,
  name: string,
  { forecast, endUse, nowMs }: ForecastDetails,
): string {
  const { median, low, high } = forecast.now.average;
  const today = `Today about ${pctWords(median)} % (${pctWords(low)} to ${pctWords(high)}).`;
  const wanted = `${endUse.minPct} to ${endUse.maxPct} %`;
  if (reach.likelyMs !== null && reach.likelyMs - nowMs < DAY_MS) {
    return `${today} That is within ${wanted}.`;
  }
  if (reach.likelyMs !== null) {
    return `${today} In ${name} it likely comes within ${wanted} on ${dayText(reach.likelyMs)}.`;
  }
  return `${today} In ${name} it does not likely come within ${wanted}; the driest month’s air there brings wood no lower than ${pctWords(floorPct.median)} %.`;
}

function Legend({ hasReadings }: { hasReadings: boolean }) {
  return (
    <ChartLegend>
      <LegendItem words="average, 8 chances in 10 within the band">
        <rect className="forecast-band" y="3" width="20" height="14" />
        <path className="forecast-average" d="M0 10h20" />
      </LegendItem>
      <LegendItem words={hasReadings ? 'core, as read' : 'core'}>
        <path className="forecast-core" d="M0 10h20" />
        {hasReadings && <DepthMark depth="core" x={10} y={11} />}
      </LegendItem>
      <LegendItem words={hasReadings ? 'shell, as read' : 'shell'}>
        <path className="forecast-shell" d="M0 10h20" />
        {hasReadings && <DepthMark depth="shell" x={10} y={10} />}
      </LegendItem>
      <LegendItem words="what the use wants">
        <rect className="finding-use" y="4" width="20" height="12" />
      </LegendItem>
      <LegendItem words="no lower in that air’s driest month">
        <path className="forecast-floor" d="M0 10h20" />
      </LegendItem>
      <LegendItem words="fit for use: earliest, likeliest, latest">
        <path className="forecast-reach" d="M2 10h16M2 5v10M18 5v10" />
        <path className="forecast-reach-likely" d="M10 4l5 6-5 6-5-6z" />
      </LegendItem>
    </ChartLegend>
  );
}
