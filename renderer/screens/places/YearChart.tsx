import { monthNames } from '../../../shared-core/units/month-names.ts';
import { Axes, pctTicks, plotMargin } from '../../parts/chart/Axes.tsx';
import { ChartFigure } from '../../parts/chart/ChartFigure.tsx';
import { linearScale, niceTicks } from '../../parts/chart/scale.ts';
import { pctWords } from '../../parts/McValue.tsx';
import './year-chart.css';

const HEIGHT = 210;

/** The moisture content that wood comes to at one place, month by month, with the driest month marked. */
export function YearChart({
  placeName,
  emcPct,
  driestMonth,
  thisMonth,
}: {
  placeName: string;
  /** Twelve, January first, % MC. */
  emcPct: readonly number[];
  /** 1 to 12. */
  driestMonth: number;
  /** 1 to 12. */
  thisMonth: number;
}) {
  const steady = Math.max(...emcPct) - Math.min(...emcPct) < 0.05;
  return (
    <ChartFigure
      title={`What wood comes to at ${placeName}, by month`}
      summary={
        steady
          ? `The air is the same all year: wood left there long enough comes to ${pctWords(emcPct[0] ?? null)} %.`
          : `Driest in ${monthNames[driestMonth - 1]}: wood left there long enough comes no lower than ${pctWords(emcPct[driestMonth - 1] ?? null)} %.`
      }
      height={HEIGHT}
      columns={['Month', 'Wood comes to (EMC), %']}
      rows={emcPct.map((pct, month) => ({
        key: month,
        cells: [monthNames[month] ?? '', pctWords(pct)],
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
        xTicks={monthNames.map((name, index) => ({
          at: index + 1,
          label: width < 420 ? name.slice(0, 1) : name.slice(0, 3),
        }))}
        yTicks={pctTicks(yTicks)}
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
          now
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
            driest {pctWords(driest.pct)} %
          </text>
        </g>
      )}
    </>
  );
}

/** Words under a mark, kept off the axis on the left and within the drawing on the right. */
function besideMark(month: number | null): { dx: number; anchor: 'start' | 'middle' | 'end' } {
  if (month === 1) return { dx: -8, anchor: 'start' };
  return month === 12 ? { dx: 8, anchor: 'end' } : { dx: 0, anchor: 'middle' };
}
