import type { DryingRun } from './drying-run.ts';
import { Stepper } from './stepper.ts';

/**
 * The rates of change of all cells, % MC/s: the same equations for another solver (`drying-odex.test.ts`, `drying.bench.ts`).
 * The returned array is the same at every call.
 */
export function dryingRates(
  run: DryingRun,
): (profilePct: Float64Array, tempC: number, emcPct: number) => Float64Array {
  // Another solver takes differences of them, whatever tolerance the run has.
  const stepper = new Stepper(run.grid, 1e-10);
  stepper.begin(run, 20);
  const rates = new Float64Array(run.grid.widthM.length);
  return (profilePct, tempC, emcPct) => {
    stepper.bringTo(tempC);
    stepper.rates(profilePct, emcPct, rates);
    return rates;
  };
}
