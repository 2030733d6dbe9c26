import type { Archived } from '../contract/archive.ts';
import type { Say } from '../words/words.ts';

/** Why a board left, and where it was merged, into which. */
export const whyArchived = ({ code, into: intoCode }: Pick<Archived, 'code' | 'into'>, say: Say): string =>
  intoCode === undefined ? say(`archived.${code}`) : say('archived.merged-into', { intoCode });
