import type { Exclusion } from '../probing/readings/exclusion.ts';
import type { Say } from '../words/words.ts';

/** Why something measured is left out: in the person's own words, or in ours. */
export const exclusionText = (why: Exclusion, say: Say): string =>
  'text' in why ? why.text : say(`exclusion.${why.code}`);
