import { useState } from 'react';
import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { Depth } from '../../../shared-core/probing/readings/reading.ts';
import type { Band, PlaceForecast } from '../../../shared-core/wood/drying/forecast.ts';
import type { Formats } from '../../../shared-core/words/formats.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { ChartFigure } from '../../chart/ChartFigure.tsx';
import { ChartLegend, LegendItem } from '../../chart/ChartLegend.tsx';
import { Choice } from '../../form/Choice.tsx';
import { useWords } from '../../words.ts';
import { DepthMark } from './DepthMark.tsx';
import { FORECAST_HEIGHT, ForecastDrawing } from './ForecastDrawing.tsx';
import { isoOf } from './iso-of.ts';
import { likelyInterval } from './reading-interval.ts';
import { readyWords } from './ready-words.ts';
import './findings-chart.css';
import './forecast.css';
import { DAY_MS } from '../../../shared-core/time.ts';

/** More places than this are compared in the table alone. */
const MOST_SHOWN = 6;
/** The table of a forecast has about so many lines for the time ahead. */
const TABLE_LINES = 10;

/** What the board was and will likely be: its readings, the forecast here or elsewhere, and the target. */
export function ForecastPlot({ code, details }: { code: string; details: ForecastDetails }) {
  const words = useWords();
  const { say, formats } = words;
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
          label={say('forecast.if-moved-to')}
          value={String(places[index]!.placeId)}
          options={places.slice(0, MOST_SHOWN).map((each, at) => ({
            value: String(each.placeId),
            label: at === 0 ? say('forecast.stays', { placeName: each.name }) : each.name,
            isName: at > 0,
          }))}
          onValue={(value) => setPlaceId(Number(value))}
        />
      )}
      <ChartFigure
        title={say('forecast.chart', { boardCode: code, placeName: name })}
        summary={summaryOf(place, name, details, words)}
        height={FORECAST_HEIGHT}
        legend={<Legend hasReadings={readings.length > 0} />}
        columns={[
          say('chart.day'),
          say('board.average'),
          say('chart.likely'),
          say('board.shell'),
          say('board.core'),
        ]}
        rows={[
          ...lines(forecast.past, span.fromMs, nowMs, 'past', formats),
          ...lines(ahead, nowMs, span.toMs, 'ahead', formats),
          ...forecast.residuals
            .filter(({ atMs }) => atMs >= span.fromMs)
            .map(({ atMs, depthFraction, measuredPct, sdPct }) => ({
              key: `read ${atMs} ${depthFraction}`,
              cells: [
                say('forecast.reading-row', { depth: depthAt(depthFraction), readOn: isoOf(atMs) }),
                formats.mc(measuredPct),
                formats.mcInterval(likelyInterval(measuredPct, sdPct)),
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
              interval: likelyInterval(measuredPct, sdPct),
            }))}
          />
        )}
      </ChartFigure>
    </div>
  );
}

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

function lines(band: Band, fromMs: number, toMs: number, part: string, formats: Formats) {
  const within = band.atMs.flatMap((atMs, index) => (atMs >= fromMs && atMs <= toMs ? [index] : []));
  const every = Math.max(1, Math.ceil(within.length / TABLE_LINES));
  return within
    .filter((_, position) => position % every === 0)
    .map((index) => {
      const average = band.average[index]!;
      return {
        key: `${part} ${band.atMs[index]}`,
        cells: [
          formats.day(isoOf(band.atMs[index]!)),
          formats.mc(average.median),
          formats.mcInterval({ minPct: average.low, maxPct: average.high }),
          formats.mc(band.shell[index]!.median),
          formats.mc(band.core[index]!.median),
        ],
      };
    });
}

function summaryOf(
  place: PlaceForecast,
  placeName: string,
  { forecast, endUse, nowMs }: ForecastDetails,
  words: Words,
): string {
  const { say } = words;
  const { likelyMs } = place.reach;
  const { median, low, high } = forecast.now.average;
  const ahead =
    likelyMs === null
      ? say('forecast.not-in-place', { placeName, emcPct: place.floorPct.median })
      : likelyMs - nowMs < DAY_MS
        ? say('forecast.should-be-ready')
        : say('forecast.ready-in-place', { placeName, readyText: readyWords(place, nowMs, words) });
  return [
    say('forecast.average-now', { averagePct: median, likelyInterval: { minPct: low, maxPct: high } }),
    say('forecast.target', { targetRange: endUse }),
    ahead,
  ].join(' ');
}

function Legend({ hasReadings }: { hasReadings: boolean }) {
  const { say } = useWords();
  return (
    <ChartLegend>
      <LegendItem words={say('forecast.legend-average')}>
        <rect className="forecast-band" y="3" width="20" height="14" />
        <path className="forecast-average" d="M0 10h20" />
      </LegendItem>
      <LegendItem words={say(hasReadings ? 'forecast.legend-core-readings' : 'board.core')}>
        <path className="forecast-core" d="M0 10h20" />
        {hasReadings && <DepthMark depth="core" x={10} y={11} />}
      </LegendItem>
      <LegendItem words={say(hasReadings ? 'forecast.legend-shell-readings' : 'board.shell')}>
        <path className="forecast-shell" d="M0 10h20" />
        {hasReadings && <DepthMark depth="shell" x={10} y={10} />}
      </LegendItem>
      <LegendItem words={say('chart.target')}>
        <rect className="finding-use" y="4" width="20" height="12" />
      </LegendItem>
      <LegendItem words={say('forecast.legend-lowest-emc')}>
        <path className="forecast-floor" d="M0 10h20" />
      </LegendItem>
      <LegendItem words={say('forecast.legend-ready')}>
        <path className="forecast-reach" d="M2 10h16M2 5v10M18 5v10" />
        <path className="forecast-reach-likely" d="M10 4l5 6-5 6-5-6z" />
      </LegendItem>
    </ChartLegend>
  );
}
