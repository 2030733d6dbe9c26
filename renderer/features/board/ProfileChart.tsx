import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow, LatestFinding } from '../../../shared-core/contract/yard.ts';
import { mcAxis } from '../../../shared-core/drawing/chart/axes.ts';
import type { Layer } from '../../../shared-core/drawing/chart/description.ts';
import { likelyInterval } from '../../../shared-core/probing/readings/likely-interval.ts';
import { toldDepths } from '../../../shared-core/probing/readings/told-depths.ts';
import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';

/** The depths of the axis and of the table, as parts of the thickness. */
const DEPTHS = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1];

/** Moisture through the thickness today, from the upper face down: the latest readings and the likely profile. */
export function ProfileChart({
  board: { code, latest: found },
  details,
}: {
  board: Pick<BoardRow, 'code' | 'latest'>;
  details: ForecastDetails;
}) {
  const words = useWords();
  const { say, formats } = words;
  const { forecast, thicknessMm, endUse, emcNowPct } = details;
  const latest = latestRound(details.readings);
  const stops = DEPTHS.map((part) => part * thicknessMm);
  const read = (depth: 'shell' | 'core'): Layer => ({
    kind: 'points',
    name: say(depth === 'shell' ? 'profile.legend-shell' : 'profile.legend-core'),
    color: depth === 'shell' ? 'keep-drying' : 'bring-in',
    shape: depth === 'shell' ? 'square' : 'triangle',
    values: latest
      .filter((reading) => reading.depth === depth)
      .map(({ depthFraction, mcPct, standardUncertaintyPct }) => {
        const { minPct, maxPct } = likelyInterval(mcPct, standardUncertaintyPct);
        return { x: depthFraction * thicknessMm, y: mcPct, low: minPct, high: maxPct };
      }),
  });
  return (
    <Chart
      title={say('profile.chart', { boardCode: code })}
      summary={summaryOf(details, latest[0]?.atMs, found, say)}
      x={{
        title: say('profile.depth'),
        from: 0,
        to: thicknessMm,
        text: formats.shortLength,
        // Every other depth, or the faces and the middle.
        ticks: (most) => {
          const every = most >= 5 ? 2 : 4;
          return stops
            .filter((_, index) => index % every === 0)
            .map((at) => ({ at, label: formats.shortLength(at) }));
        },
      }}
      y={mcAxis(say('profile.mc'), words, { startsAtZero: false })}
      stops={stops}
      layers={[
        {
          kind: 'level',
          name: null,
          color: 'ink-soft',
          y: emcNowPct,
          word: say('profile.emc', { emcPct: emcNowPct }),
        },
        {
          kind: 'line',
          name: say('profile.legend-likely'),
          color: 'accent',
          stroke: 'solid',
          values: forecast.now.profile.map(({ depthFraction, pct }) => ({
            x: depthFraction * thicknessMm,
            y: pct.median,
            low: pct.low,
            high: pct.high,
          })),
        },
        read('shell'),
        read('core'),
        {
          kind: 'target',
          name: say('chart.target', { targetRange: endUse }),
          color: 'ready',
          low: endUse.minPct,
          high: endUse.maxPct,
        },
      ]}
    />
  );
}

type Readings = ForecastDetails['readings'];

/** Readings of the day on which it was last probed. */
function latestRound(readings: Readings): Readings {
  const lastMs = Math.max(...readings.map(({ atMs }) => atMs));
  return readings.filter(({ atMs }) => lastMs - atMs < DAY_MS / 2);
}

function summaryOf(
  details: ForecastDetails,
  readMs: number | undefined,
  found: LatestFinding | null,
  say: Say,
): string {
  const { nowMs, emcNowPct, endUse } = details;
  const isOld = readMs !== undefined && nowMs - readMs >= DAY_MS;
  return [
    ...shellAndCore(details, found, say),
    say('forecast.target', { targetRange: endUse }),
    say('profile.emc-here', { emcPct: emcNowPct }),
    ...(isOld ? [say('profile.read-on', { readOn: isoOf(readMs) })] : []),
  ].join(' ');
}

/** On the day of its readings, they say what shell and core are, as everywhere else; the forecast says what they leave open. */
function shellAndCore({ forecast, nowMs }: ForecastDetails, found: LatestFinding | null, say: Say): string[] {
  const { shell, core } = forecast.now;
  const isReadToday = found !== null && !found.isQuestionable && nowMs - Date.parse(found.at) < DAY_MS;
  const read = isReadToday ? toldDepths(found) : { shellPct: null, corePct: null };
  const known = [
    ...(read.shellPct === null ? [] : [say('profile.shell-read', { shellPct: read.shellPct })]),
    ...(read.corePct === null ? [] : [say('profile.core-read', { corePct: read.corePct })]),
  ];
  if (known.length === 0) return [say('profile.now', { shellPct: shell.median, corePct: core.median })];
  return [
    ...known,
    ...(read.shellPct === null ? [say('profile.shell-now', { shellPct: shell.median })] : []),
    ...(read.corePct === null ? [say('profile.core-now', { corePct: core.median })] : []),
  ];
}
