/** Keys that came one right after another. */
export interface Burst {
  text: string;
  startMs: number;
  lastMs: number;
}

/** Keys closer together than this are a burst, and no ID takes a label scanner longer, ms. From memory. */
export const SCAN_MS = 50;
/**
 * But for a long one: so long a character, ms; no hand types as fast. A scanner without a wire sends each press and each
 * release as its own report, some 10 ms apart. From memory.
 */
const CHARACTER_MS = 20;
const LEAST_CHARACTERS = 2;

/**
 * Takes in one more key. A label scanner types a whole ID at once and ends with Enter, which no hand does.
 *
 * @param atMs when the key went down, ms; only differences matter
 * @returns the burst it belongs to, and the ID where it ended a scan
 */
export function nextBurst(
  burst: Burst | null,
  key: string,
  atMs: number,
): { burst: Burst | null; scanned: string | null } {
  // A scanner holds Shift for capitals.
  if (key === 'Shift') return { burst, scanned: null };
  if (key.length === 1) {
    const goesOn = burst !== null && atMs - burst.lastMs <= SCAN_MS;
    const { text, startMs } = goesOn ? burst : { text: '', startMs: atMs };
    return { burst: { text: text + key, startMs, lastMs: atMs }, scanned: null };
  }
  const { text, startMs } = burst ?? { text: '', startMs: atMs };
  const isScan =
    key === 'Enter' &&
    text.length >= LEAST_CHARACTERS &&
    atMs - startMs <= Math.max(SCAN_MS, CHARACTER_MS * text.length);
  return { burst: null, scanned: isScan ? text.trim() : null };
}
