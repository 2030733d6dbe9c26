import type { Shape, Stroke } from './description.ts';

/** The dashes of a line, px of a drawing; undefined for an unbroken one. */
export const dashes: Record<Stroke, readonly number[] | undefined> = {
  solid: undefined,
  dashed: [7, 4],
  dotted: [2, 3],
  'dash-dot': [10, 3, 2, 3],
};

const corners: Record<Exclude<Shape, 'disc' | 'ring'>, readonly (readonly [x: number, y: number])[]> = {
  square: [
    [-5, -5],
    [5, -5],
    [5, 5],
    [-5, 5],
  ],
  triangle: [
    [0, -7],
    [6.5, 5],
    [-6.5, 5],
  ],
  diamond: [
    [0, -7],
    [7, 0],
    [0, 7],
    [-7, 0],
  ],
};
const RADIUS = 4.5;

const rounded = (value: number): number => Number(value.toFixed(3));

/**
 * The mark of a single value as SVG path data around a point.
 * @param scale  from the px of a drawing to the unit of the point
 */
export function pointPath(shape: Shape, x: number, y: number, scale = 1): string {
  if (shape === 'disc' || shape === 'ring') {
    const [radius, height] = [rounded(RADIUS * scale), rounded(y)];
    const [left, right] = [rounded(x - radius), rounded(x + radius)];
    const arc = `A${radius} ${radius} 0 0 1 `;
    return `M${left} ${height}${arc}${right} ${height}${arc}${left} ${height}Z`;
  }
  const points = corners[shape].map(([dx, dy]) => `${rounded(x + dx * scale)} ${rounded(y + dy * scale)}`);
  return `M${points.join('L')}Z`;
}
