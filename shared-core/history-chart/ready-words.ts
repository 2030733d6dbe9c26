import type { Ready } from '../probing/calls/ready-in.ts';
import type { Words } from '../words/words.ts';

/**
 * When a board is ready in a place: "Likely Sep 2027 (Jul 2027 – May 2028)", "Now", "Unlikely: the air is too damp …".
 * @returns null where no day is stated
 */
export function readyWords(
  { ready, lowestEmcPct }: { ready: Ready | null; lowestEmcPct: number | null },
  { say }: Words,
): string | null {
  switch (ready?.kind) {
    case undefined:
      return null;
    case 'now':
      return say('forecast.now');
    case 'any-day':
      return say('forecast.any-day');
    case 'likely':
      // Without a latest day there are no 8 chances in 10 between two.
      return say(ready.when.to === null ? 'forecast.about' : 'forecast.likely', { readyWhen: ready.when });
    case 'unlikely':
      return say('forecast.unlikely', { bestMonthsRange: ready.best, driestPct: ready.driestPct });
    case 'too-damp':
      return say('forecast.air-too-damp', { emcPct: lowestEmcPct as number });
    case 'not-within':
      return ready.driestPct === null
        ? say('forecast.not-within')
        : say('forecast.driest', { driestPct: ready.driestPct });
    case 'leaves':
      return ready.entersOn === null
        ? say('forecast.leaves', { leavesOn: ready.leavesOn })
        : say('forecast.passes', { entersOn: ready.entersOn, leavesOn: ready.leavesOn });
  }
}
