/**
 * Where a continuous, strictly monotone function takes a wanted value.
 *
 * Regula falsi with the Illinois step: keeps the root bracketed, needs no derivative, and converges faster than
 * bisection (Dahlquist and Björck, Numerical Methods, 1974, section 6.4; from memory).
 *
 * @param f       strictly monotone between `low` and `high`
 * @param wanted  a value between f(low) and f(high)
 * @returns       x with f(x) = wanted, to 1e-12 of the bracket's size
 * @throws        RangeError if `wanted` is not between f(low) and f(high)
 */
export function solveMonotone(f: (x: number) => number, wanted: number, low: number, high: number): number {
  let [a, b] = [low, high];
  let fa = f(a) - wanted;
  let fb = f(b) - wanted;
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) throw new RangeError(`No value between ${low} and ${high} gives ${wanted}.`);
  const tolerance = 1e-12 * Math.max(1, Math.abs(low), Math.abs(high));
  let x = a;
  for (let step = 0; step < 200 && Math.abs(b - a) > tolerance; step++) {
    x = b - (fb * (b - a)) / (fb - fa);
    const fx = f(x) - wanted;
    if (fx === 0) return x;
    if (fx * fb < 0) {
      if (Math.abs(x - b) < tolerance) return x;
      [a, fa] = [b, fb];
    } else {
      if (Math.abs(x - b) < tolerance) return x;
      fa /= 2;
    }
    [b, fb] = [x, fx];
  }
  return x;
}
