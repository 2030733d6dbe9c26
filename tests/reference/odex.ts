import { createRequire } from 'node:module';

/**
 * What is used of npm odex, the extrapolation method of E. Hairer and G. Wanner; its own types are sources that do not
 * pass this project's strict checks.
 */
export const odex = createRequire(import.meta.url)('odex') as {
  Solver: new (
    n: number,
  ) => {
    absoluteTolerance: number;
    relativeTolerance: number;
    maxSteps: number;
    initialStepSize: number;
    solve: (
      rates: (at: number, y: number[]) => number[],
      from: number,
      y0: number[],
      to: number,
    ) => { y: number[]; outcome: number };
  };
};
