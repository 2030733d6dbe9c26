/**
 * ROS3PL, a method for stiff equations dy/dt = F(y, t): four linear systems a step, all with the same matrix, and no
 * iteration. Third order, L-stable, and its order is not lost where the equations come of diffusion.
 *
 *     (1 - gamma h J) u_i = gamma h F(y + sum of a_ij u_j, t + alpha_i h) + gamma sum of c_ij u_j + gamma h² gamma_i dF/dt
 *     y at t + h = y + sum of m_i u_i,   error = sum of e_i u_i,   J = dF/dy and dF/dt at y and t
 *
 * J. Lang and D. Teleaga, IEEE Transactions on Magnetics 44 (2008), p. 1238 (from memory); the numbers as public solvers
 * have them. `rosenbrock.test.ts` checks them against the conditions of E. Hairer and G. Wanner, Solving
 * Ordinary Differential Equations II (1996), section IV.7.
 */
const gamma = 0.435866521508459;
const a21 = 1.147140180139521;
const a31 = 2.463070773030053;

export const ros3pl = {
  gamma,
  a21,
  /** Of the third stage; the fourth has the same, and so the same F. */
  a3: [a31, a21],
  /** m_i: the fourth stage is added to where it was taken. */
  m: [a31, a21, 0, 1],
  c2: [-2.631861185781065],
  c3: [-1.302364158113095, 2.769432022251304],
  c4: [-1.5525689587324, 2.587743501215153, -1.41699329835202],
  /** Where a stage is taken, as a fraction of the step. */
  alpha: [0, 0.5, 1, 1],
  gammaOf: [gamma, -0.064133478491541, 0.111028172512505, 0],
  /** m_i less the weights of the second-order method within. */
  error: [a31 - 2.346947683513665, a21 - 0.456530569451895, -0.056949243945495, 1 - 0.738684936166224],
  /**
   * Within a step: y at t + s h = y + sum of (d_i1 s + d_i2 s² + d_i3 s³) u_i. Our own: the only weights that meet all
   * four conditions of the third order at every s.
   */
  dense: [
    [3.947446013078632, -2.058248665799504, 0.573873425750925],
    [9.575956983631407, -13.1227499256291, 4.693933122137209],
    [-0.95849664917601, 0.5, 0.45849664917601],
    [-2.398120075195584, 5.501959790112128, -2.103839714916543],
  ],
} as const;
