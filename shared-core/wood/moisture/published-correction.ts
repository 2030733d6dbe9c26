import { type Message, message } from '../../words/message.ts';
import type { Species } from '../species/species.ts';
import { resistanceCurves } from './resistance-curves.ts';

/** How readings on a species are corrected without the person's own checks. */
export function publishedCorrection({ curveId, linear }: Pick<Species, 'curveId' | 'linear'>): Message {
  if (linear) return message('species.correction.linear');
  const curve = curveId === null ? undefined : resistanceCurves.get(curveId);
  return curve
    ? message('species.correction.curve', { curveSpeciesName: curve.name })
    : message('species.correction.none');
}
