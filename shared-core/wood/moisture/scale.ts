import type { Species } from '../species/species.ts';
import type { MeterBasis, MeterScale } from './corrected.ts';
import { NEUTRAL_TEMP_C } from './temperature.ts';

/**
 * The scale that meters have unless they are set otherwise: Douglas-fir, on which they are generally calibrated
 * (W. L. James, FPL-GTR-6, 1988, from memory), at the temperature where the published formula leaves a reading as it is.
 */
export const USUAL_SCALE: MeterBasis = { curveId: 'douglas-fir-coast', tempC: NEUTRAL_TEMP_C };

/** The curve behind a % of this scale, and its temperature; `curveId` is null where none is published for its species. */
export function basisOfScale(scale: MeterScale): { curveId: string | null; tempC: number } {
  return scale.kind === 'species' ? { curveId: scale.curveId, tempC: scale.tempC } : USUAL_SCALE;
}

/** Whether a meter with this scale shows the moisture content of the species itself. */
export function showsSpecies(scale: MeterScale, { id, curveId }: Pick<Species, 'id' | 'curveId'>): boolean {
  if (scale.kind === 'species' && scale.speciesId === id) return true;
  return curveId !== null && basisOfScale(scale).curveId === curveId;
}
