/** How long the meter may take to answer one question, ms. */
export const readAnswersWithinMs = 2500;

/**
 * Waits for a promise of noble's, which may stay open forever, at most `limitMs`.
 * @param what named in the error when the time is up
 */
export function within<T>(promise: Promise<T>, limitMs: number, what: string): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`no answer within ${limitMs} ms: ${what}`)), limitMs);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
