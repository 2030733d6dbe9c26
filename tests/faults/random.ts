/** Uniform in [0, 1), drawn so that it can be repeated: the same seed gives the same numbers. */
export type Random = () => number;

/** mulberry32, a public-domain generator. */
export function randomFrom(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A whole number from `low` up to, and without, `high`. */
export const wholeBetween = (random: Random, low: number, high: number): number =>
  low + Math.floor(random() * (high - low));

export function oneOf<T>(random: Random, choices: readonly T[]): T {
  return choices[wholeBetween(random, 0, choices.length)] as T;
}
