import { type Random, randomFrom } from './random.ts';

/** What came of making one kind of fault many times. */
export interface FaultResult {
  /** How often the fault was made. */
  tried: number;
  /**
   * Everything that a window was told is saved is there afterwards, and the app goes on, or says what was lost and
   * what was kept.
   */
  survived: number;
  /**
   * Why the others count as lost without a sentence: a saved record is gone or changed, the process ended, or the app
   * said what is not so. Each begins with the seed that repeats it.
   */
  lost: string[];
}

/** Makes a fault so many times. The same seed makes the same ones. */
export type Fault = (howMany: number, seed: number) => Promise<FaultResult>;

/**
 * Makes a fault again and again, several at a time, each with a seed of its own: `seed`, `seed + 1`, and so on.
 *
 * @param attempt  makes it once; returns what was lost without a sentence, which is best nothing
 */
export async function tryOften(
  howMany: number,
  seed: number,
  lanes: number,
  attempt: (random: Random, seed: number) => Promise<readonly string[]>,
): Promise<FaultResult> {
  const lost: string[] = [];
  let survived = 0;
  let next = 0;
  async function lane(): Promise<void> {
    while (next < howMany) {
      const mine = seed + next++;
      const losses = await attempt(randomFrom(mine), mine).catch(reasonOf);
      if (losses.length === 0) survived++;
      else lost.push(`seed ${mine}: ${losses.join('; ')}`);
    }
  }
  await Promise.all(Array.from({ length: lanes }, lane));
  return { tried: howMany, survived, lost };
}

/** A test that cannot go on has found something as well. */
const reasonOf = (error: unknown): string[] => [
  `could not go on: ${error instanceof Error ? error.stack?.split('\n', 3).join(' ') : String(error)}`,
];
