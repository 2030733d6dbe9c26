import type { OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { Axes, pctTicks, plotMargin } from '../../parts/chart/Axes.tsx';
import { ChartFigure } from '../../parts/chart/ChartFigure.tsx';
import { ChartLegend, LegendItem } from '../../parts/chart/ChartLegend.tsx';
import { linearScale, niceTicks } from '../../parts/chart/scale.ts';
import { pctWords } from '../../parts/McValue.tsx';

const HEIGHT = 340;
/** The room for the name of an axis. */
const TITLE_HEIGHT = 18;
const AXES_HEIGHT = HEIGHT - TITLE_HEIGHT;

interface Point {
  checkId: number;
  piece: string;
  readingPct: number;
  ovenDryMcPct: number;
  /** By the published correction. */
  publishedMcPct: number | null;
  /** What the fit without this piece says of it, less its oven-dry MC. */
  errorPct: number;
}

/** What the meter showed on each piece against what the oven found, with the line through them and the published one. */
export function CalibrationChart({ own, speciesName }: { own: OwnFit; speciesName: string }) {
  const { fit } = own;
  if (!fit) return null;
  const points = fit.leftOut.flatMap(({ checkId, errorPct }): Point[] => {
    const check = own.checks.find((each) => each.id === checkId);
    return check?.readingPct != null && check.ovenDryMcPct !== null
      ? [
          {
            checkId,
            errorPct,
            piece: check.piece,
            readingPct: check.readingPct,
            ovenDryMcPct: check.ovenDryMcPct,
            publishedMcPct: check.publishedMcPct,
          },
        ]
      : [];
  });
  const byFit = (readingPct: number) => (readingPct - fit.b) / fit.a;
  const line =
    fit.model === 'line' ? `MC = (reading − ${fit.b.toFixed(2)}) / ${fit.a.toFixed(3)}` : offsetWords(fit.b);
  return (
    <ChartFigure
      title={`Meter against oven on ${speciesName}`}
      summary={`Your line: ${line}. A piece that it has not seen is off by about ${pctWords(fit.standardErrorPct)} % MC${
        fit.publishedErrorPct === null
          ? '.'
          : `; the correction without your checks is off by about ${pctWords(fit.publishedErrorPct)} % on the same pieces.`
      }`}
      height={HEIGHT}
      legend={<Legend hasPublished={own.published.length > 0} />}
      columns={[
        'Piece',
        'Reading, %',
        'Oven-dry MC, %',
        'By your line, %',
        'Without your checks, %',
        'Off when left out, %',
      ]}
      rows={points.map((point) => ({
        key: point.checkId,
        cells: [
          point.piece,
          pctWords(point.readingPct),
          pctWords(point.ovenDryMcPct),
          pctWords(byFit(point.readingPct)),
          pctWords(point.publishedMcPct),
          signed(point.errorPct),
        ],
      }))}
    >
      {(width) => <Plot width={width} points={points} byFit={byFit} published={own.published} />}
    </ChartFigure>
  );
}

const offsetWords = (b: number): string =>
  `MC = reading ${b < 0 ? '+' : '−'} ${Math.abs(b).toFixed(2)} (a slope would not predict better)`;
const signed = (pct: number): string => `${pct < 0 ? '−' : '+'}${pctWords(Math.abs(pct))}`;

function Plot({
  width,
  points,
  byFit,
  published,
}: {
  width: number;
  points: readonly Point[];
  byFit: (readingPct: number) => number;
  published: OwnFit['published'];
}) {
  const readings = points.map((point) => point.readingPct);
  const xTicks = niceTicks(
    Math.min(...readings) - 0.5,
    Math.max(...readings) + 0.5,
    Math.max(3, Math.floor(width / 90)),
  );
  const from = xTicks[0] ?? 0;
  const to = xTicks.at(-1) ?? 30;
  const drawn = published.filter(({ readingPct }) => readingPct >= from && readingPct <= to);
  const values = [
    ...points.map((point) => point.ovenDryMcPct),
    ...drawn.map((point) => point.mcPct),
    byFit(from),
    byFit(to),
  ];
  const yTicks = niceTicks(Math.max(0, Math.min(...values)), Math.max(...values), 6);
  const x = linearScale(from, to, plotMargin.left, width - plotMargin.right);
  const y = linearScale(
    yTicks[0] ?? 0,
    yTicks.at(-1) ?? 30,
    AXES_HEIGHT - plotMargin.bottom,
    plotMargin.top + TITLE_HEIGHT,
  );
  return (
    <>
      <Axes
        x={x}
        y={y}
        width={width}
        height={AXES_HEIGHT}
        xTicks={xTicks.map((at) => ({ at, label: String(at) }))}
        yTicks={pctTicks(yTicks)}
      />
      <text x={0} y={plotMargin.top}>
        oven-dry MC
      </text>
      <text x={width - plotMargin.right} y={HEIGHT - 4} textAnchor="end">
        meter’s reading on its own scale, %
      </text>
      <polyline
        className="published-line"
        points={drawn.map((point) => `${x.at(point.readingPct)},${y.at(point.mcPct)}`).join(' ')}
      />
      <line className="own-line" x1={x.at(from)} y1={y.at(byFit(from))} x2={x.at(to)} y2={y.at(byFit(to))} />
      {points.map((point) => (
        <g key={point.checkId}>
          <circle className="check-point" cx={x.at(point.readingPct)} cy={y.at(point.ovenDryMcPct)} r={5} />
          <text x={x.at(point.readingPct) + 8} y={y.at(point.ovenDryMcPct) + 14}>
            {point.piece}
          </text>
        </g>
      ))}
    </>
  );
}

function Legend({ hasPublished }: { hasPublished: boolean }) {
  return (
    <ChartLegend>
      <LegendItem words="a piece">
        <circle className="check-point" cx="10" cy="10" r="5" />
      </LegendItem>
      <LegendItem words="your line">
        <path className="own-line" d="M1 10h18" />
      </LegendItem>
      {hasPublished && (
        <LegendItem words="the correction without your checks">
          <path className="published-line" d="M1 10h18" />
        </LegendItem>
      )}
    </ChartLegend>
  );
}
