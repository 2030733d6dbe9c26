import type { SampleBoardState } from '../../../shared-core/contract/sample-board.ts';
import type { LatestFinding } from '../../../shared-core/contract/yard.ts';
import { Axes, pctTicks, plotMargin } from '../../chart/Axes.tsx';
import { ChartFigure } from '../../chart/ChartFigure.tsx';
import { ChartLegend, LegendItem } from '../../chart/ChartLegend.tsx';
import { linearScale, niceTicks } from '../../chart/scale.ts';
import { timeAxisTicks, timeScale } from '../../chart/time-axis.ts';
import { useWords } from '../../words.ts';

const HEIGHT = 240;

interface Point {
  at: string;
  mcPct: number;
  /** Null: what the meter found. */
  kg: number | null;
}

/** Moisture content over time by the board's weight, beside what the meter found. */
export function WeightChart({
  code,
  state,
  findings,
}: {
  code: string;
  state: SampleBoardState;
  findings: readonly LatestFinding[];
}) {
  const { say, formats } = useWords();
  const byWeight: Point[] = [
    ...state.cuts.flatMap(({ at, boardKg, estimate }) =>
      estimate ? [{ at, kg: boardKg, mcPct: estimate.mcWhenCutPct }] : [],
    ),
    ...state.weights.flatMap(({ at, kg, mcPct, excluded }) =>
      mcPct !== null && excluded === null ? [{ at, kg, mcPct }] : [],
    ),
  ].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  const [first, last] = [byWeight[0], byWeight.at(-1)];
  if (!first || !last) return null;
  const byMeter = findings.flatMap(({ at, averagePct }): Point[] =>
    averagePct === null ? [] : [{ at, kg: null, mcPct: averagePct }],
  );
  const all = [...byWeight, ...byMeter].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  return (
    <ChartFigure
      title={say('weights.chart', { boardCode: code })}
      summary={
        first === last
          ? say('weights.chart-one', { mcPct: last.mcPct, weighedOn: last.at })
          : say('weights.chart-more', {
              firstPct: first.mcPct,
              firstOn: first.at,
              lastPct: last.mcPct,
              lastOn: last.at,
            })
      }
      height={HEIGHT}
      legend={<Legend hasMeter={byMeter.length > 0} />}
      columns={[say('chart.day'), say('weights.weight'), say('weights.by-weight'), say('weights.by-meter')]}
      rows={all.map((point, index) => ({
        key: index,
        cells: [
          formats.day(point.at),
          point.kg === null ? '' : formats.weight(point.kg),
          point.kg === null ? '' : formats.mc(point.mcPct),
          point.kg === null ? formats.mc(point.mcPct) : '',
        ],
      }))}
    >
      {(width) => <Plot width={width} byWeight={byWeight} byMeter={byMeter} />}
    </ChartFigure>
  );
}

function Plot({
  width,
  byWeight,
  byMeter,
}: {
  width: number;
  byWeight: readonly Point[];
  byMeter: readonly Point[];
}) {
  const { formats } = useWords();
  const all = [...byWeight, ...byMeter];
  const times = all.map((point) => Date.parse(point.at));
  const values = all.map((point) => point.mcPct);
  const yTicks = niceTicks(Math.min(0, ...values), Math.max(...values) * 1.05, 5);
  const x = timeScale(times, width);
  const y = linearScale(yTicks[0] ?? 0, yTicks.at(-1) ?? 30, HEIGHT - plotMargin.bottom, plotMargin.top);
  const place = (point: Point) => ({ cx: x.at(Date.parse(point.at)), cy: y.at(point.mcPct) });
  return (
    <>
      <Axes
        x={x}
        y={y}
        width={width}
        height={HEIGHT}
        xTicks={timeAxisTicks(x, width, formats)}
        yTicks={pctTicks(yTicks, formats)}
      />
      <polyline
        className="weight-line"
        points={byWeight.map((point) => `${place(point).cx},${place(point).cy}`).join(' ')}
      />
      {byWeight.map((point) => (
        <circle key={point.at} className="weight-point" {...place(point)} r={5} />
      ))}
      {byMeter.map((point) => (
        <path
          key={point.at}
          className="meter-point"
          d={`M${place(point).cx} ${place(point).cy - 7}l7 7-7 7-7-7z`}
        />
      ))}
    </>
  );
}

function Legend({ hasMeter }: { hasMeter: boolean }) {
  const { say } = useWords();
  return (
    <ChartLegend>
      <LegendItem words={say('weights.by-weight')}>
        <circle className="weight-point" cx="10" cy="10" r="5" />
      </LegendItem>
      {hasMeter && (
        <LegendItem words={say('weights.legend-meter')}>
          <path className="meter-point" d="M10 3l7 7-7 7-7-7z" />
        </LegendItem>
      )}
    </ChartLegend>
  );
}
