import { useState } from 'react';
import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { LatestFinding } from '../../../shared-core/contract/yard.ts';
import type { Layer } from '../../../shared-core/drawing/chart/description.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { mcAxis, timeAxis } from '../../chart/axes.ts';
import { Chart } from '../../chart/Chart.tsx';
import { timeTicks } from '../../chart/time-ticks.ts';
import { Choice } from '../../form/Choice.tsx';
import { Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { forecastLayers, readingsOf } from './forecast-layers.ts';
import { historySummary } from './history-summary.ts';

/** More places than this are compared in the table alone. */
const MOST_PLACES = 6;
/** The curves are read out at about so many days. */
const STOPS = 16;

/** What a board was and will likely be, on one line of time: its rounds, its places, the forecast and the target. */
export function HistoryChart({
  code,
  findings,
  stays,
  endUse,
  forecast,
}: {
  code: string;
  /** What each round found, oldest first. */
  findings: readonly LatestFinding[];
  /** Where it was, oldest first. */
  stays: ForecastDetails['stays'];
  /** Null where it is not known. */
  endUse: Pick<EndUse, 'name' | 'minPct' | 'maxPct'> | null;
  /** Null where there is none. */
  forecast: ForecastDetails | null;
}) {
  const words = useWords();
  const { say } = words;
  const [isWhole, setWhole] = useState(false);
  const [placeId, setPlaceId] = useState<number | null>(null);
  const index = Math.max(0, forecast?.places.findIndex((place) => place.placeId === placeId) ?? 0);
  const lastRead = findings.at(-1);
  const from =
    forecast && lastRead && !isWhole ? Date.parse(lastRead.at) : startOf(findings, stays, forecast);
  const x = timeAxis(from, forecast ? endOf(forecast, index) : latestOf(findings, stays), words);
  return (
    <Sheet title={say('history.title')}>
      {forecast && (
        <div className={css.choices}>
          {forecast.places.length > 1 && (
            <Choice
              label={<span className="spoken-only">{say('forecast.if-moved-to')}</span>}
              value={String(forecast.places[index]!.placeId)}
              options={forecast.places.slice(0, MOST_PLACES).map(({ placeId: id, name }, at) => ({
                value: String(id),
                label: at === 0 ? say('forecast.stays') : name,
                isName: at > 0,
              }))}
              onValue={(id) => setPlaceId(Number(id))}
            />
          )}
          {lastRead && (
            <Button kind="quiet" onClick={() => setWhole(!isWhole)}>
              {say(isWhole ? 'history.from-last' : 'history.whole')}
            </Button>
          )}
        </div>
      )}
      <Chart
        title={
          forecast
            ? say('forecast.chart', { boardCode: code, placeName: forecast.places[index]!.name })
            : say('history.chart', { boardCode: code })
        }
        summary={historySummary(findings, endUse, forecast && { details: forecast, index }, words)}
        x={x}
        y={mcAxis(say('chart.mc'), words)}
        stops={forecast ? timeTicks(x.from, x.to, STOPS) : []}
        layers={[
          ...(forecast ? forecastLayers(forecast, index, words) : []),
          ...readLayers(findings, forecast, words),
          ...(endUse
            ? [
                {
                  kind: 'target' as const,
                  name: say('chart.target', { targetRange: endUse }),
                  color: 'ready' as const,
                  low: endUse.minPct,
                  high: endUse.maxPct,
                },
              ]
            : []),
          ...stayLayers(stays, x.from, words),
        ]}
      />
    </Sheet>
  );
}

/** What the rounds found: averages, and the shell and the core as the forecast has them, with their intervals. */
function readLayers(
  findings: readonly LatestFinding[],
  forecast: ForecastDetails | null,
  { say }: Words,
): Layer[] {
  const found = (of: 'averagePct' | 'shellPct' | 'corePct') =>
    findings.flatMap((finding) => {
      const { [of]: pct, lowPct, highPct } = finding;
      const interval =
        of === 'averagePct' && lowPct !== null && highPct !== null ? { low: lowPct, high: highPct } : {};
      return pct === null ? [] : [{ x: Date.parse(finding.at), y: pct, ...interval }];
    });
  const depths = (['shell', 'core'] as const).map((depth): Layer => {
    const read = forecast ? readingsOf(forecast, depth) : [];
    return {
      kind: 'points',
      name: say(depth === 'shell' ? 'history.shell-read' : 'history.core-read'),
      color: depth === 'shell' ? 'keep-drying' : 'bring-in',
      shape: depth === 'shell' ? 'square' : 'triangle',
      values: read.length > 0 ? read : found(depth === 'shell' ? 'shellPct' : 'corePct'),
    };
  });
  return [
    {
      kind: 'points',
      name: say('history.average-read'),
      color: 'ink',
      shape: 'disc',
      isJoined: forecast === null,
      values: found('averagePct'),
    },
    ...depths,
  ];
}

const eventsOf = (findings: readonly LatestFinding[], stays: ForecastDetails['stays']): number[] => [
  ...findings.map(({ at }) => Date.parse(at)),
  ...stays.map(({ fromMs }) => fromMs),
];
const latestOf = (findings: readonly LatestFinding[], stays: ForecastDetails['stays']): number =>
  Math.max(...eventsOf(findings, stays));

function startOf(
  findings: readonly LatestFinding[],
  stays: ForecastDetails['stays'],
  forecast: ForecastDetails | null,
): number {
  return Math.min(...eventsOf(findings, stays), ...(forecast?.forecast.past.atMs.slice(0, 1) ?? []));
}

/** Past the day on which it is likely ready; a year ahead where there is none. */
function endOf({ forecast, nowMs }: ForecastDetails, index: number): number {
  const { reach, band } = forecast.places[index]!;
  const reachedMs = reach.lateMs ?? reach.likelyMs;
  const endMs =
    reachedMs === null ? nowMs + 365 * DAY_MS : Math.max(reachedMs + 45 * DAY_MS, nowMs + 90 * DAY_MS);
  return Math.min(endMs, band.atMs.at(-1)!);
}

/** Each move by the name of its place. A stay that began before what is shown is named at the left edge. */
function stayLayers(stays: ForecastDetails['stays'], fromMs: number, { say }: Words): Layer[] {
  const rules = (name: string | null, shown: ForecastDetails['stays']): Layer => ({
    kind: 'marks',
    name,
    color: 'line-strong',
    stroke: 'dashed',
    values: shown.map((stay) => ({
      x: Math.max(fromMs, stay.fromMs),
      word: shortened(stay.placeName),
      isName: true,
    })),
  });
  const begun = stays.filter((stay) => stay.fromMs < fromMs);
  return [rules(null, begun.slice(-1)), rules(say('history.moved'), stays.slice(begun.length))];
}

const shortened = (name: string) => (name.length > 18 ? `${name.slice(0, 17)}…` : name);
