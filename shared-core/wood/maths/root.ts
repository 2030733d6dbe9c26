/**
 * Where a continuous, strictly monotone function takes a given value.
 *
 * Regula falsi with the Illinois step: keeps the root bracketed, needs no derivative, and converges faster than
 * bisection (Dahlquist and Björck, Numerical Methods, 1974, section 6.4; from memory).
 *
 * @param f       strictly monotone between `low` and `high`
 * @param value   a value between f(low) and f(high)
 * @returns       x with f(x) = value, to 1e-12 of the bracket's size
 * @throws        RangeError if `value` is not between f(low) and f(high)
 */
export function solveMonotone(f: (x: number) => number, value: number, low: number, high: number): number {
  let [a, b] = [low, high];
  let fa = f(a) - value;
  let fb = f(b) - value;
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) throw new RangeError(`No value between ${low} and ${high} gives ${value}.`);
  const tolerance = 1e-12 * Math.max(1, Math.abs(low), Math.abs(high));
  let x = a;
  for (let step = 0; step < 200 && Math.abs(b - a) > tolerance; step++) {
    x = b - (fb * (b - a)) / (fb - fa);
    const fx = f(x) - value;
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
