import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** How readings on a species are corrected without the person's own checks. */
export function correctionMessage({ curveId, linear }: Pick<Species, 'curveId' | 'linear'>): Message {
  if (linear) return message('species.correction.linear');
  const curve = curveId === null ? undefined : resistanceCurves.get(curveId);
  return curve
    ? message('species.correction.curve', { curveName: curve.name })
    : message('species.correction.none');
}
