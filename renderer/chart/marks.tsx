import type { Color, Shape, Stroke } from '../../shared-core/drawing/chart/description.ts';
import { dashes, pointPath } from '../../shared-core/drawing/chart/mark-paths.ts';

/** As an attribute, so that a saved picture can have the color itself in its place. */
export const paint = (color: Color | 'sheet' | 'line' | 'ready-soft'): string => `var(--${color})`;

/** How a line is drawn. */
export const lineLook = (color: Color, stroke: Stroke) => ({
  fill: 'none',
  stroke: paint(color),
  strokeWidth: stroke === 'solid' ? 2.5 : 1.75,
  strokeDasharray: dashes[stroke]?.join(' '),
  strokeLinejoin: 'round' as const,
});

/** The mark of a single value; a disc is full, and every other is hollow. */
export function PointMark({ shape, color, x, y }: { shape: Shape; color: Color; x: number; y: number }) {
  const look = { fill: paint(shape === 'disc' ? color : 'sheet'), stroke: paint(color), strokeWidth: 2 };
  return shape === 'disc' || shape === 'ring' ? (
    <circle cx={x} cy={y} r={4.5} {...look} />
  ) : (
    <path d={pointPath(shape, x, y)} {...look} />
  );
}

/** A whisker from one end to the other, upright at an x or lying at a y. */
export function Whisker({ x, from, to, color }: { x: number; from: number; to: number; color: Color }) {
  return (
    <path
      d={`M${x} ${from}V${to}M${x - 3} ${from}h6M${x - 3} ${to}h6`}
      fill="none"
      stroke={paint(color)}
      strokeWidth={1.5}
    />
  );
}

/** When something is likely: a bar with a diamond, open to the right where the end is null. */
export function IntervalMark({
  color,
  y,
  from,
  to,
  end,
  likely,
}: {
  color: Color;
  y: number;
  from: number;
  to: number | null;
  /** Where an open one ends. */
  end: number;
  likely: number | null;
}) {
  const closed = `M${from} ${y - 5}v10${to === null ? '' : `M${to} ${y - 5}v10`}`;
  return (
    <>
      <path d={`M${from} ${y}H${to ?? end}${closed}`} fill="none" stroke={paint(color)} strokeWidth={3} />
      {likely !== null && <path d={`M${likely} ${y - 7}l6 7-6 7-6-7z`} fill={paint(color)} />}
    </>
  );
}
