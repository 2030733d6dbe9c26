import { resistanceCurves } from '../../../shared-core/wood/species/catalogue.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';

/** How readings on a wood are corrected, in words. */
export function correctionWords(species: Pick<Species, 'curveId' | 'linear'>): string {
  if (species.linear) return 'Species and temperature, by its linear coefficients';
  const curve = species.curveId === null ? undefined : resistanceCurves.get(species.curveId);
  if (curve) return `Species and temperature, by the curve of ${curve.name}`;
  return 'Temperature only: no curve is published for it';
}
