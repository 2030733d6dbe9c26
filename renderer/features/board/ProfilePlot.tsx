import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { Axes, pctTicks, plotMargin } from '../../chart/Axes.tsx';
import { ChartFigure } from '../../chart/ChartFigure.tsx';
import { ChartLegend, LegendItem } from '../../chart/ChartLegend.tsx';
import { linearScale, niceTicks, type Scale } from '../../chart/scale.ts';
import { useWords } from '../../words.ts';
import { DepthMark } from './DepthMark.tsx';
import { isoOf } from './iso-of.ts';
import { likelyInterval } from './reading-interval.ts';
import './findings-chart.css';
import './forecast.css';
import { DAY_MS } from '../../../shared-core/time.ts';

const HEIGHT = 300;
/** The room for depths in inches, and for the labels above. */
const LEFT = 62;
const TOP = plotMargin.top + 18;
const BOTTOM = HEIGHT - plotMargin.bottom;

/** Moisture through the thickness today, the board lying as it is probed: the latest readings and the likely profile. */
export function ProfilePlot({ code, details }: { code: string; details: ForecastDetails }) {
  const { say, formats } = useWords();
  const { forecast, thicknessMm, endUse, emcNowPct } = details;
  const { profile } = forecast.now;
  const latest = latestRound(details.readings);
  const readMs = latest[0]?.atMs;
  const depth = (fraction: number) => formats.shortLength(fraction * thicknessMm);
  return (
    <ChartFigure
      title={say('profile.chart', { boardCode: code })}
      summary={summaryOf(details, readMs, say)}
      height={HEIGHT}
      legend={<Legend hasReadings={latest.length > 0} />}
      columns={[say('profile.depth'), say('profile.mc'), say('chart.likely')]}
      rows={[
        ...profile
          .filter((_, index) => index % 2 === 0)
          .map(({ depthFraction, pct }) => ({
            key: depthFraction,
            cells: [
              depth(depthFraction),
              formats.mc(pct.median),
              formats.mcInterval({ minPct: pct.low, maxPct: pct.high }),
            ],
          })),
        ...latest.map((reading, index) => ({
          key: `reading ${index}`,
          cells: [
            say('profile.reading-row', { depthMm: reading.depthFraction * thicknessMm }),
            formats.mc(reading.mcPct),
            formats.mcInterval(intervalOf(reading)),
          ],
        })),
      ]}
    >
      {(width) => (
        <ProfileDrawing
          width={width}
          profile={profile}
          latest={latest}
          endUse={endUse}
          emcNowPct={emcNowPct}
          depth={depth}
        />
      )}
    </ChartFigure>
  );
}

type Readings = ForecastDetails['readings'];

const intervalOf = ({ mcPct, standardUncertaintyPct }: Readings[number]) =>
  likelyInterval(mcPct, standardUncertaintyPct);

/** Readings of the day on which it was last probed. */
function latestRound(readings: Readings): Readings {
  const lastMs = Math.max(...readings.map(({ atMs }) => atMs));
  return readings.filter(({ atMs }) => lastMs - atMs < DAY_MS / 2);
}

function summaryOf(
  { forecast, nowMs, emcNowPct, endUse }: ForecastDetails,
  readMs: number | undefined,
  say: Say,
): string {
  const { shell, core } = forecast.now;
  const isOld = readMs !== undefined && nowMs - readMs >= DAY_MS;
  return [
    say('profile.now', { shellPct: shell.median, corePct: core.median }),
    say('forecast.target', { targetRange: endUse }),
    say('profile.emc-here', { emcPct: emcNowPct }),
    ...(isOld ? [say('profile.read-on', { readOn: isoOf(readMs) })] : []),
  ].join(' ');
}

function ProfileDrawing({
  width,
  profile,
  latest,
  endUse,
  emcNowPct,
  depth,
}: {
  width: number;
  profile: ForecastDetails['forecast']['now']['profile'];
  latest: Readings;
  endUse: ForecastDetails['endUse'];
  emcNowPct: number;
  depth: (fraction: number) => string;
}) {
  const { say, formats } = useWords();
  const values = [
    ...profile.flatMap(({ pct }) => [pct.low, pct.high]),
    ...latest.map(intervalOf).flatMap(({ minPct, maxPct }) => [minPct, maxPct]),
    endUse.minPct,
    endUse.maxPct,
    emcNowPct,
  ];
  const ticks = niceTicks(
    Math.max(0, Math.min(...values) - 0.5),
    Math.max(...values) + 0.5,
    Math.max(2, Math.floor(width / 70)),
  );
  const x = linearScale(ticks[0]!, ticks.at(-1)!, LEFT, width - plotMargin.right);
  const y = linearScale(0, 1, TOP, BOTTOM);
  const point = (pct: number, fraction: number) => `${x.at(pct).toFixed(1)},${y.at(fraction).toFixed(1)}`;
  const low = profile.map(({ pct, depthFraction }) => point(pct.low, depthFraction));
  const high = profile.map(({ pct, depthFraction }) => point(pct.high, depthFraction)).reverse();
  const isEmcRight = emcNowPct > (x.from + x.to) / 2;
  return (
    <>
      <rect
        className="profile-wood"
        x={LEFT}
        y={TOP}
        width={Math.max(0, width - plotMargin.right - LEFT)}
        height={BOTTOM - TOP}
      />
      <rect
        className="finding-use"
        x={x.at(endUse.minPct)}
        width={Math.max(0, x.at(endUse.maxPct) - x.at(endUse.minPct))}
        y={TOP}
        height={BOTTOM - TOP}
      />
      <DepthAxis y={y} depth={depth} />
      <Axes x={x} y={y} width={width} height={HEIGHT} xTicks={pctTicks(ticks, formats)} yTicks={[]} />
      <polygon className="forecast-band" points={[...low, ...high].join(' ')} />
      <polyline
        className="forecast-average"
        points={profile.map(({ pct, depthFraction }) => point(pct.median, depthFraction)).join(' ')}
      />
      <line className="profile-emc" x1={x.at(emcNowPct)} x2={x.at(emcNowPct)} y1={TOP - 4} y2={BOTTOM} />
      <text
        className="forecast-note"
        x={x.at(emcNowPct) + (isEmcRight ? 6 : -6)}
        y={TOP - 8}
        textAnchor={isEmcRight ? 'end' : 'start'}
      >
        {say('profile.emc', { emcPct: emcNowPct })}
      </text>
      {latest.map((reading, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two readings of a round may be alike in everything.
        <ReadingMark key={index} reading={reading} offset={offsetOf(latest, index)} x={x} y={y} />
      ))}
    </>
  );
}

/** Readings at one depth are drawn beside each other. */
function offsetOf(readings: Readings, index: number): number {
  const reading = readings[index]!;
  const same = readings.filter((other) => Math.abs(other.depthFraction - reading.depthFraction) < 0.02);
  return (same.indexOf(reading) - (same.length - 1) / 2) * 13;
}

function DepthAxis({ y, depth }: { y: Scale; depth: (fraction: number) => string }) {
  return (
    <g className="chart-axes">
      {[0, 0.25, 0.5, 0.75, 1].map((fraction) => (
        <text key={fraction} x={LEFT - 6} y={y.at(fraction)} textAnchor="end" dominantBaseline="middle">
          {depth(fraction)}
        </text>
      ))}
    </g>
  );
}

function ReadingMark({
  reading,
  offset,
  x,
  y,
}: {
  reading: Readings[number];
  /** Down from its depth, px. */
  offset: number;
  x: Scale;
  y: Scale;
}) {
  const { mcPct, depth, depthFraction } = reading;
  const down = y.at(depthFraction) + offset;
  const { minPct, maxPct } = intervalOf(reading);
  const [low, middle, high] = [x.at(Math.max(x.from, minPct)), x.at(mcPct), x.at(maxPct)];
  return (
    <g>
      <path
        className="finding-interval"
        d={`M${low} ${down}H${high}M${low} ${down - 3}v6M${high} ${down - 3}v6`}
      />
      <DepthMark depth={depth} x={middle} y={down} />
    </g>
  );
}

function Legend({ hasReadings }: { hasReadings: boolean }) {
  const { say } = useWords();
  return (
    <ChartLegend>
      <LegendItem words={say('profile.legend-likely')}>
        <rect className="forecast-band" x="3" width="14" height="20" />
        <path className="forecast-average" d="M10 0v20" />
      </LegendItem>
      {hasReadings && (
        <>
          <LegendItem words={say('profile.legend-shell')}>
            <path className="finding-interval" d="M1 10h18M1 7v6M19 7v6" />
            <DepthMark depth="shell" x={10} y={10} />
          </LegendItem>
          <LegendItem words={say('profile.legend-core')}>
            <path className="finding-interval" d="M1 10h18M1 7v6M19 7v6" />
            <DepthMark depth="core" x={10} y={11} />
          </LegendItem>
        </>
      )}
      <LegendItem words={say('chart.target')}>
        <rect className="finding-use" x="4" width="12" height="20" />
      </LegendItem>
    </ChartLegend>
  );
}
