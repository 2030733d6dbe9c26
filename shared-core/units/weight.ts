import type { DisplayUnits } from './length.ts';

/** Exact by definition (international avoirdupois pound, 1959). */
const KG_PER_LB = 0.45359237;

export const weightUnit = (units: DisplayUnits): string => (units === 'metric' ? 'kg' : 'lb');
/** A board's mass as a person types it in a field. */
export const kgFromWeight = (typed: number, units: DisplayUnits): number =>
  units === 'metric' ? typed : typed * KG_PER_LB;

/** A mass to three figures, or to the gram where it was weighed as finely: "12.4 kg", "0.835 kg", "27.3 lb". */
export function weightText(kg: number, units: DisplayUnits): string {
  const shown = units === 'metric' ? kg : kg / KG_PER_LB;
  const decimals = shown >= 100 ? 0 : shown >= 10 ? 1 : shown >= 1 ? 2 : 3;
  return `${shown.toFixed(decimals)} ${weightUnit(units)}`;
}
