import { resistanceCurves } from '../../../shared-core/wood/catalogue.ts';
import type { Wood } from '../../../shared-core/wood/wood.ts';

/** How readings on a wood are corrected, in words. */
export function correctionWords(wood: Pick<Wood, 'curveId' | 'linear'>): string {
  if (wood.linear) return 'Species and temperature, by its linear coefficients';
  const curve = wood.curveId === null ? undefined : resistanceCurves.get(wood.curveId);
  if (curve) return `Species and temperature, by the curve of ${curve.name}`;
  return 'Temperature only: no curve is published for it';
}
