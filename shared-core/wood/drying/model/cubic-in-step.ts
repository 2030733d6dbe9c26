import { ros3pl } from './rosenbrock.ts';

const [dense1, dense2, dense3, dense4] = ros3pl.dense;

/** A value over a step: coefficients of the powers of the fraction of the step. */
export type CubicInStep = { p0: number; p1: number; p2: number; p3: number };

/**
 * @param begin  the value at the begin of the step
 * @param v1     of its four stages, as `u_i` in `rosenbrock.ts`
 */
export const cubicOf = (begin: number, v1: number, v2: number, v3: number, v4: number): CubicInStep => ({
  p0: begin,
  p1: dense1[0] * v1 + dense2[0] * v2 + dense3[0] * v3 + dense4[0] * v4,
  p2: dense1[1] * v1 + dense2[1] * v2 + dense3[1] * v3 + dense4[1] * v4,
  p3: dense1[2] * v1 + dense2[2] * v2 + dense3[2] * v3 + dense4[2] * v4,
});
