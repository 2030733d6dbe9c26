import type { Archived } from '../../../shared-core/contract/archive.ts';
import type { Words } from '../../../shared-core/words/words.ts';

/** Why a board left, and where it was merged, into which. */
export const whyArchived = ({ code, into: intoCode }: Archived, say: Words['say']): string =>
  intoCode === undefined ? say(`archived.${code}`) : say('archived.merged-into', { intoCode });
