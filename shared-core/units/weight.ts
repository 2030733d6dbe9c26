import { KG_PER_POUND } from '../measures.ts';
import type { DisplayUnits } from './length.ts';

export const weightUnit = (units: DisplayUnits): string => (units === 'metric' ? 'kg' : 'lb');
/** A board's weight as a person types it in a field. */
export const kgFromWeight = (typed: number, units: DisplayUnits): number =>
  units === 'metric' ? typed : typed * KG_PER_POUND;
