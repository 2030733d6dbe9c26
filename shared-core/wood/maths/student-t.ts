/**
 * How many standard uncertainties wide an interval must be on either side to hold the true value with a given
 * probability, when the spread was itself estimated from few readings.
 *
 * @param probability two-sided coverage, above 0 and below 1; 0.9 leaves 5 % on either side
 * @param degrees     degrees of freedom, 1 or more, need not be whole; Infinity gives the normal distribution
 * @throws RangeError outside the ranges above
 * Source: JCGM 100:2008 (GUM), annex G; the distribution by the incomplete beta function, DLMF 8.17.
 * @example coverageFactor(0.9, 10) // 1.812
 */
export function coverageFactor(probability: number, degrees: number): number {
  if (!(probability > 0 && probability < 1))
    throw new RangeError(`A coverage must lie between 0 and 1, not ${probability}.`);
  if (!(degrees >= 1)) throw new RangeError(`Degrees of freedom must be 1 or more, not ${degrees}.`);
  // Beyond this the normal distribution agrees to better than 1e-5.
  const ν = Math.min(degrees, 1e6);
  const outside = (t: number) => incompleteBeta(ν / (ν + t * t), ν / 2, 0.5);
  let low = 0;
  let high = 1;
  while (outside(high) > 1 - probability) high *= 2;
  while (high - low > 1e-12 * high) {
    const t = (low + high) / 2;
    if (outside(t) > 1 - probability) low = t;
    else high = t;
  }
  return (low + high) / 2;
}

/** Regularised incomplete beta function I_x(a, b): DLMF 8.17.22 and the symmetry 8.17.4. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(
    lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x) - Math.log(a),
  );
  // Evaluated forwards by the modified Lentz method.
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < tiny ? tiny : d);
  let fraction = d;
  for (let m = 1; m < 5000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d, tiny);
    c = nonZero(1 + even / c, tiny);
    fraction *= c * d;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d, tiny);
    c = nonZero(1 + odd / c, tiny);
    fraction *= c * d;
    if (Math.abs(c * d - 1) < 1e-14) break;
  }
  return front * fraction;
}

const nonZero = (value: number, tiny: number): number => (Math.abs(value) < tiny ? tiny : value);

/** Logarithm of the gamma function for z > 0: Stirling's series (DLMF 5.11.1) after shifting z above 12. */
function lnGamma(z: number): number {
  let shift = 0;
  let x = z;
  while (x < 12) {
    shift -= Math.log(x);
    x += 1;
  }
  const r = 1 / (x * x);
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r / 1680))) / x;
  return shift + (x - 0.5) * Math.log(x) - x + 0.5 * Math.log(2 * Math.PI) + series;
}
