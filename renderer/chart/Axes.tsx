import type { Formats } from '../../shared-core/words/formats.ts';
import type { Scale } from './scale.ts';
import './chart.css';

/** A labelled place on an axis. */
export interface Tick {
  at: number;
  label: string;
}

/** The ticks of an axis in percent. */
export const pctTicks = (values: readonly number[], formats: Formats): Tick[] =>
  values.map((at) => ({ at, label: formats.percent(at) }));

/** The room around a plot for the figures on its axes. */
export const plotMargin = { left: 50, right: 14, top: 14, bottom: 26 };

/** The lines and figures of a plot: values upwards, time or months across. */
export function Axes({
  x,
  y,
  xTicks,
  yTicks,
  width,
  height,
}: {
  x: Scale;
  y: Scale;
  xTicks: readonly Tick[];
  yTicks: readonly Tick[];
  width: number;
  height: number;
}) {
  const right = width - plotMargin.right;
  const bottom = height - plotMargin.bottom;
  return (
    <g className="chart-axes">
      {yTicks.map((tick) => (
        <g key={tick.at}>
          <line x1={plotMargin.left} x2={right} y1={y.at(tick.at)} y2={y.at(tick.at)} />
          <text x={plotMargin.left - 6} y={y.at(tick.at)} textAnchor="end" dominantBaseline="middle">
            {tick.label}
          </text>
        </g>
      ))}
      {xTicks.map((tick) => (
        <g key={tick.at}>
          <line x1={x.at(tick.at)} x2={x.at(tick.at)} y1={bottom} y2={bottom + 5} />
          <text x={x.at(tick.at)} y={height - 6} textAnchor={anchorAt(x.at(tick.at), width)}>
            {tick.label}
          </text>
        </g>
      ))}
      <line className="chart-base" x1={plotMargin.left} x2={right} y1={bottom} y2={bottom} />
    </g>
  );
}

/** Centerd, but for a figure near an edge that would be cut off there. */
function anchorAt(left: number, width: number): 'start' | 'middle' | 'end' {
  if (left > width - 30) return 'end';
  return left < 30 ? 'start' : 'middle';
}
