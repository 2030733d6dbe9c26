import { KG_PER_POUND } from '../measures.ts';
import type { DisplayUnits } from './length.ts';

export const weightUnit = (units: DisplayUnits): string => (units === 'metric' ? 'kg' : 'lb');
/** A board's weight as a field shows it, to a hundredth. */
export const weightFromKg = (kg: number, units: DisplayUnits): number =>
  Math.round((units === 'metric' ? kg : kg / KG_PER_POUND) * 100) / 100;
/** A board's weight as a person types it in a field. */
export const kgFromWeight = (typed: number, units: DisplayUnits): number =>
  units === 'metric' ? typed : typed * KG_PER_POUND;
