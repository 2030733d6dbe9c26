import { Axes, pctTicks, plotMargin } from '../../chart/Axes.tsx';
import { ChartFigure } from '../../chart/ChartFigure.tsx';
import { linearScale, niceTicks } from '../../chart/scale.ts';
import { useWords } from '../../words.ts';
import './year-chart.css';

const HEIGHT = 210;

/** The EMC at one place, month by month, with the driest month marked. */
export function YearChart({
  placeName,
  emcPct,
  driestMonth,
  thisMonth,
}: {
  /** Null while it has none. */
  placeName: string | null;
  /** Twelve, January first, % MC. */
  emcPct: readonly number[];
  /** 1 to 12. */
  driestMonth: number;
  /** 1 to 12. */
  thisMonth: number;
}) {
  const { say, formats } = useWords();
  const lowest = { emcPct: emcPct[driestMonth - 1] ?? 0, monthName: formats.month(driestMonth) };
  const steady = Math.max(...emcPct) - Math.min(...emcPct) < 0.05;
  return (
    <ChartFigure
      title={placeName === null ? say('places.year-unnamed') : say('places.year', { placeName })}
      summary={
        steady ? say('places.steady-emc', { emcPct: lowest.emcPct }) : say('places.lowest-emc', lowest)
      }
      height={HEIGHT}
      columns={[say('places.month'), say('places.emc')]}
      rows={emcPct.map((pct, month) => ({
        key: month,
        cells: [formats.month(month + 1), formats.mc(pct)],
      }))}
    >
      {(width) => (
        <YearPlot
          width={width}
          emcPct={emcPct}
          driestMonth={steady ? null : driestMonth}
          thisMonth={thisMonth}
        />
      )}
    </ChartFigure>
  );
}

function YearPlot({
  width,
  emcPct,
  driestMonth,
  thisMonth,
}: {
  width: number;
  emcPct: readonly number[];
  driestMonth: number | null;
  thisMonth: number;
}) {
  const { say, formats } = useWords();
  const yTicks = niceTicks(0, Math.max(...emcPct) * 1.15, 5);
  const x = linearScale(1, 12, plotMargin.left + 16, width - plotMargin.right - 16);
  const y = linearScale(0, yTicks.at(-1) ?? 20, HEIGHT - plotMargin.bottom, plotMargin.top);
  const points = emcPct.map((pct, index) => ({ month: index + 1, x: x.at(index + 1), y: y.at(pct), pct }));
  const driest = points.find((point) => point.month === driestMonth);
  const driestText = besideMark(driestMonth);
  return (
    <>
      <Axes
        x={x}
        y={y}
        width={width}
        height={HEIGHT}
        xTicks={points.map(({ month }) => ({
          at: month,
          label: formats.month(month, width < 420 ? 'narrow' : 'short'),
        }))}
        yTicks={pctTicks(yTicks, formats)}
      />
      <g className="year-now">
        <line
          x1={x.at(thisMonth)}
          x2={x.at(thisMonth)}
          y1={plotMargin.top + 4}
          y2={HEIGHT - plotMargin.bottom}
        />
        <text
          x={x.at(thisMonth) + (thisMonth > 10 ? -5 : 5)}
          y={plotMargin.top + 8}
          textAnchor={thisMonth > 10 ? 'end' : 'start'}
        >
          {say('places.now')}
        </text>
      </g>
      <polyline className="year-line" points={points.map((point) => `${point.x},${point.y}`).join(' ')} />
      {points.map((point) => (
        <circle key={point.month} className="year-dot" cx={point.x} cy={point.y} r={4} />
      ))}
      {driest && (
        <g className="year-driest">
          <path d={`M${driest.x} ${driest.y + 7}l7 12h-14z`} />
          <text x={driest.x + driestText.dx} y={driest.y + 34} textAnchor={driestText.anchor}>
            {say('places.lowest-mark', { emcPct: driest.pct })}
          </text>
        </g>
      )}
    </>
  );
}

/** Text under a mark, clear of the axis on the left and within the drawing on the right. */
function besideMark(month: number | null): { dx: number; anchor: 'start' | 'middle' | 'end' } {
  if (month === 1) return { dx: -8, anchor: 'start' };
  return month === 12 ? { dx: 8, anchor: 'end' } : { dx: 0, anchor: 'middle' };
}
