import type { OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { Axes, pctTicks, plotMargin } from '../../chart/Axes.tsx';
import { ChartFigure } from '../../chart/ChartFigure.tsx';
import { ChartLegend, LegendItem } from '../../chart/ChartLegend.tsx';
import { linearScale, niceTicks } from '../../chart/scale.ts';
import { useWords } from '../../words.ts';

const HEIGHT = 340;
/** The room for the name of an axis. */
const TITLE_HEIGHT = 18;
const AXES_HEIGHT = HEIGHT - TITLE_HEIGHT;

interface Point {
  checkId: number;
  piece: string;
  readingPct: number;
  ovenDryMcPct: number;
  /** Without the checks. */
  publishedMcPct: number | null;
  /** Its MC by the fit without this piece, less its oven-dry MC. */
  errorPct: number;
}

/** The meter's readings of the pieces against their oven-dry MC, with the line through them and the published one. */
export function CalibrationChart({ own, speciesName }: { own: OwnFit; speciesName: string }) {
  const words = useWords();
  const { say, formats } = words;
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
  return (
    <ChartFigure
      title={say('oven.chart', { speciesName })}
      summary={summaryOf(fit, words)}
      height={HEIGHT}
      legend={<Legend hasPublished={own.published.length > 0} />}
      columns={[
        say('oven.piece'),
        say('oven.reading'),
        say('oven.oven-dry'),
        say('oven.by-line'),
        say('oven.without-checks'),
        say('oven.left-out'),
      ]}
      rows={points.map((point) => ({
        key: point.checkId,
        cells: [
          point.piece,
          formats.mc(point.readingPct),
          formats.mc(point.ovenDryMcPct),
          formats.mc(byFit(point.readingPct)),
          point.publishedMcPct === null ? '–' : formats.mc(point.publishedMcPct),
          formats.signedPoints(point.errorPct),
        ],
      }))}
    >
      {(width) => <Plot width={width} points={points} byFit={byFit} published={own.published} />}
    </ChartFigure>
  );
}

/** The line, and how far off it is with and without the checks. */
function summaryOf(fit: NonNullable<OwnFit['fit']>, { say, formats }: Words): string {
  // MC = (reading - b) / a
  const term = { sign: fit.b < 0 ? 'plus' : 'minus', offset: Math.abs(fit.b) };
  const sentences =
    fit.model === 'line'
      ? [say('oven.line', { ...term, slope: formats.number(fit.a, 3) })]
      : [say('oven.offset', term), say('oven.no-slope')];
  sentences.push(say('oven.error', { errorPoints: fit.standardErrorPct }));
  if (fit.publishedErrorPct !== null) {
    sentences.push(say('oven.error-published', { errorPoints: fit.publishedErrorPct }));
  }
  return sentences.join(' ');
}

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
  const { say, formats } = useWords();
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
        xTicks={pctTicks(xTicks, formats)}
        yTicks={pctTicks(yTicks, formats)}
      />
      <text x={0} y={plotMargin.top}>
        {say('oven.oven-dry')}
      </text>
      <text x={width - plotMargin.right} y={HEIGHT - 4} textAnchor="end">
        {say('oven.axis-reading')}
      </text>
      <polyline
        className="published-line"
        points={drawn.map((point) => `${x.at(point.readingPct)},${y.at(point.mcPct)}`).join(' ')}
      />
      <line className="own-line" x1={x.at(from)} y1={y.at(byFit(from))} x2={x.at(to)} y2={y.at(byFit(to))} />
      {points.map((point) => (
        <g key={point.checkId}>
          <circle className="check-point" cx={x.at(point.readingPct)} cy={y.at(point.ovenDryMcPct)} r={5} />
          <text x={x.at(point.readingPct) + 8} y={y.at(point.ovenDryMcPct) + 14} className="notranslate">
            {point.piece}
          </text>
        </g>
      ))}
    </>
  );
}

function Legend({ hasPublished }: { hasPublished: boolean }) {
  const { say } = useWords();
  return (
    <ChartLegend>
      <LegendItem words={say('oven.piece')}>
        <circle className="check-point" cx="10" cy="10" r="5" />
      </LegendItem>
      <LegendItem words={say('oven.your-line')}>
        <path className="own-line" d="M1 10h18" />
      </LegendItem>
      {hasPublished && (
        <LegendItem words={say('oven.without-checks')}>
          <path className="published-line" d="M1 10h18" />
        </LegendItem>
      )}
    </ChartLegend>
  );
}
