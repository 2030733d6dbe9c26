import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { Depth } from '../../../shared-core/probing/readings/reading.ts';
import type { Band, PlaceForecast, Quantiles } from '../../../shared-core/wood/drying/forecast.ts';
import type { PctRange } from '../../../shared-core/words/message.ts';
import { Axes, pctTicks, plotMargin } from '../../chart/Axes.tsx';
import { linearScale, niceTicks, type Scale } from '../../chart/scale.ts';
import { timeAxisTicks } from '../../chart/time-axis.ts';
import { useWords } from '../../words.ts';
import { DepthMark } from './DepthMark.tsx';
import { EndUseBand } from './EndUseBand.tsx';
import { STAY_NAMES_PX, StayMarks } from './StayMarks.tsx';

export const FORECAST_HEIGHT = 360;
const TOP = plotMargin.top + STAY_NAMES_PX;
const BOTTOM = FORECAST_HEIGHT - plotMargin.bottom;

/** The average of one round's readings at one depth, with its likely interval. */
export interface Measured {
  atMs: number;
  depth: Depth;
  pct: number;
  interval: PctRange;
}

interface Span {
  fromMs: number;
  toMs: number;
}

/** The drawing of a forecast: past to the left of today, the time ahead to its right. */
export function ForecastDrawing({
  width,
  past,
  place,
  span,
  nowMs,
  endUse,
  stays,
  measured,
}: {
  width: number;
  past: Band;
  place: PlaceForecast;
  span: Span;
  nowMs: number;
  endUse: ForecastDetails['endUse'];
  stays: ForecastDetails['stays'];
  measured: readonly Measured[];
}) {
  const { say, formats } = useWords();
  const right = width - plotMargin.right;
  const shown = measured.filter(({ atMs }) => atMs >= span.fromMs);
  const [before, ahead] = [part(past, span), part(place.band, span)];
  const highest = Math.max(
    endUse.maxPct,
    ...[...before.average, ...ahead.average].map(({ high }) => high),
    ...[...before.core, ...ahead.core].map(({ median }) => median),
    ...shown.map(({ interval }) => interval.maxPct),
  );
  const yTicks = niceTicks(0, highest, 6);
  const x = linearScale(span.fromMs, span.toMs, plotMargin.left, right);
  const y = linearScale(0, yTicks.at(-1) ?? 30, BOTTOM, TOP);
  return (
    <>
      <EndUseBand endUse={endUse} y={y} width={width} />
      <Axes
        x={x}
        y={y}
        width={width}
        height={FORECAST_HEIGHT}
        xTicks={timeAxisTicks(x, width, formats)}
        yTicks={pctTicks(yTicks, formats)}
      />
      <StayMarks stays={staysWithin(stays, span)} x={x} top={plotMargin.top} bottom={BOTTOM} right={right} />
      <BandLines band={before} x={x} y={y} />
      <g className="forecast-ahead">
        <BandLines band={ahead} x={x} y={y} />
      </g>
      <line
        className="forecast-floor"
        x1={x.at(nowMs)}
        x2={right}
        y1={y.at(place.floorPct.median)}
        y2={y.at(place.floorPct.median)}
      />
      <text className="forecast-note" x={right - 4} y={y.at(place.floorPct.median) + 16} textAnchor="end">
        {say('forecast.lowest-emc', { emcPct: place.floorPct.median })}
      </text>
      <line className="forecast-now" x1={x.at(nowMs)} x2={x.at(nowMs)} y1={TOP - 6} y2={BOTTOM} />
      <text className="forecast-note" x={x.at(nowMs) + 5} y={TOP + 6}>
        {say('forecast.today')}
      </text>
      <Reach reach={place.reach} x={x} levelY={y.at((endUse.minPct + endUse.maxPct) / 2)} />
      {shown.map((each) => (
        <MeasuredMark key={`${each.atMs} ${each.depth}`} measured={each} x={x} y={y} />
      ))}
    </>
  );
}

/** A stay that began before what is shown is named at the left edge. */
function staysWithin(stays: ForecastDetails['stays'], { fromMs }: Span): ForecastDetails['stays'] {
  const current = stays.findLastIndex((stay) => stay.fromMs <= fromMs);
  return stays
    .slice(Math.max(0, current))
    .map((stay) => ({ ...stay, fromMs: Math.max(fromMs, stay.fromMs) }));
}

function part({ atMs, average, shell, core }: Band, { fromMs, toMs }: Span): Band {
  const isShown = (_: unknown, index: number) => atMs[index]! >= fromMs && atMs[index]! <= toMs;
  return {
    atMs: atMs.filter(isShown),
    average: average.filter(isShown),
    shell: shell.filter(isShown),
    core: core.filter(isShown),
  };
}

function BandLines({ band, x, y }: { band: Band; x: Scale; y: Scale }) {
  const point = (pct: number, index: number) =>
    `${x.at(band.atMs[index]!).toFixed(1)},${y.at(pct).toFixed(1)}`;
  const line = (values: readonly Quantiles[]) =>
    values.map(({ median }, index) => point(median, index)).join(' ');
  const high = band.average.map((value, index) => point(value.high, index));
  const low = band.average.map((value, index) => point(value.low, index)).reverse();
  return (
    <>
      <polygon className="forecast-band" points={[...high, ...low].join(' ')} />
      <polyline className="forecast-core" points={line(band.core)} />
      <polyline className="forecast-shell" points={line(band.shell)} />
      <polyline className="forecast-average" points={line(band.average)} />
    </>
  );
}

/** When it is likely ready: from the earliest to the latest likely day, open to the right where that is beyond what is shown. */
function Reach({ reach, x, levelY }: { reach: PlaceForecast['reach']; x: Scale; levelY: number }) {
  const { earlyMs, likelyMs, lateMs } = reach;
  if (earlyMs === null) return null;
  const left = x.at(earlyMs);
  const end = x.at(Math.min(lateMs ?? Number.POSITIVE_INFINITY, x.to));
  const closed = lateMs !== null && lateMs <= x.to;
  return (
    <>
      <path
        className="forecast-reach"
        d={`M${left} ${levelY}H${end}M${left} ${levelY - 6}v12${closed ? `M${end} ${levelY - 6}v12` : ''}`}
      />
      {likelyMs !== null && likelyMs <= x.to && (
        <path className="forecast-reach-likely" d={`M${x.at(likelyMs)} ${levelY - 8}l6 8-6 8-6-8z`} />
      )}
    </>
  );
}

function MeasuredMark({ measured, x, y }: { measured: Measured; x: Scale; y: Scale }) {
  const { atMs, depth, pct, interval } = measured;
  // Beside each other, so that neither hides the other's interval.
  const left = x.at(atMs) + (depth === 'core' ? 4 : -4);
  const [low, middle, high] = [y.at(interval.minPct), y.at(pct), y.at(interval.maxPct)];
  return (
    <g>
      <path
        className="finding-interval"
        d={`M${left} ${low}V${high}M${left - 3} ${low}h6M${left - 3} ${high}h6`}
      />
      <DepthMark depth={depth} x={left} y={middle} />
    </g>
  );
}
